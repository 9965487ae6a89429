import assert from 'node:assert/strict';
import { ToneHull } from '../../../src/picture/judge/hull';
import { LINE_POINTS, LINE_STEPS, type ToneLine } from '../../../src/picture/judge/tone-line';

const line = (at: (L: number) => [number, number]): ToneLine => ({
  a: Float64Array.from({ length: LINE_POINTS }, (_, i) => at(i / LINE_STEPS)[0]),
  b: Float64Array.from({ length: LINE_POINTS }, (_, i) => at(i / LINE_STEPS)[1]),
  from: 0,
  to: 100,
});

const near = (found: number, wanted: number, within = 0.01 * wanted + 1e-9) =>
  assert.ok(Math.abs(found - wanted) <= within, `${found}, not ${wanted}`);

describe('hulls of the tone line', () => {
  it('of one lightness is a point', () => {
    const hull = new ToneHull(line(L => [L / 10, 0]));
    near(hull.distance(50, 50, 5, 3), 3);
    near(hull.distance(50, 50, 8, 4), 5);
  });
  it('of a straight line is a stretch of it', () => {
    const hull = new ToneHull(line(L => [L / 10, 0]));
    near(hull.distance(20, 60, 4, 0), 0);
    near(hull.distance(20, 60, 8, 0), 2);
    near(hull.distance(20, 60, 0, 0), 2);
  });
  it('of a bent line holds what lies between its ends and its middle', () => {
    const hull = new ToneHull(line(L => [0, 15 - 15 * ((L - 50) / 50) ** 2]));
    near(hull.distance(0, 100, 0, 7), 0);
    near(hull.distance(0, 100, 0, 20), 5);
    near(hull.distance(0, 100, 3, 7), 3);
    near(hull.distance(45, 55, 0, 7), 7.85, 0.05);
  });
  it('beyond the ends of the line reaches to neutral, as black and white do', () => {
    const hull = new ToneHull({ ...line(() => [6, 8]), from: 20, to: 80 });
    near(hull.distance(30, 40, 3, 4), 5);
    near(hull.distance(5, 40, 3, 4), 0);
    near(hull.distance(90, 95, 0, 0), 0);
  });
});

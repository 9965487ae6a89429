import assert from 'node:assert/strict';
import { tinted, tintLine } from '../../../src/remedy/grey/tint';

const zone = (L: number, weight: number, a: number, b: number) => ({ L, weight, a, b, residual: 0 });
const turning = { zones: [zone(80, 0.75, 2, 8), zone(20, 0.25, -2, -12)] };

describe('the tint of a toned result', () => {
  it("is the picture's own line, between its zones and on beyond them", () => {
    const line = tintLine({ kind: 'own' }, turning);
    assert.deepEqual(line(20), turning.zones[1]);
    assert.deepEqual(line(50), { a: 0, b: -2 });
    assert.deepEqual([line(0).b, line(100).b], [-12, 8]);
  });
  it('is the mean of the area where a turning cast is straightened', () => {
    const line = tintLine({ kind: 'even' }, turning);
    assert.deepEqual(
      [line(10), line(90)],
      [
        { a: 1, b: 3 },
        { a: 1, b: 3 },
      ],
    );
  });
  it('is what was stated', () => assert.equal(tintLine({ kind: 'stated', a: 1, b: -4 }, turning)(40).b, -4));
  it('is none in a picture without zones', () =>
    assert.deepEqual(tintLine({ kind: 'own' }, { zones: [] })(40), { a: 0, b: 0 }));
  it('is written entry by entry', () =>
    assert.deepEqual(
      [...tinted(Float32Array.of(20, 80), tintLine({ kind: 'own' }, turning))],
      [-2, -12, 2, 8],
    ));
});

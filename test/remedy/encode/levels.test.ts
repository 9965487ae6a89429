import assert from 'node:assert/strict';
import { nearestLevels } from '../../../src/remedy/encode/levels';

const of = (wanted: number[], scale: number[]) => [
  ...nearestLevels(Float32Array.from(wanted), Float32Array.from(scale)),
];

describe('the nearest level', () => {
  it('is by lightness, on a scale that rises', () =>
    assert.deepEqual(of([0, 4, 6, 24, 26, 100], [0, 10, 40, 100]), [0, 0, 1, 1, 2, 3]));
  it('is by lightness, on a scale of ink, which falls', () =>
    assert.deepEqual(of([100, 96, 94, 10], [100, 90, 50, 20]), [0, 0, 1, 3]));
  it('is itself for every level of the scale', () => {
    const scale = Array.from({ length: 256 }, (_, i) => 100 * (i / 255) ** 1.4);
    assert.deepEqual(of(scale, scale), [...scale.keys()]);
  });
  it('is an end of the scale for what lies beyond it', () =>
    assert.deepEqual(of([-5, 120], [3, 50, 90]), [0, 2]));
  it('takes a scale that turns back as one that waits', () =>
    assert.deepEqual(of([30, 59], [0, 40, 30, 60]), [1, 3]));
});

import assert from 'node:assert/strict';
import { lightnessZones, toneOf, ZONES, zoneOf } from '../../../src/picture/judge/lightness';
import { labCells } from './cells';

describe('lightness', () => {
  it('has sixteen equal zones, ends included', () => {
    assert.deepEqual(
      [zoneOf(-1), zoneOf(0), zoneOf(6.2), zoneOf(6.3), zoneOf(100), zoneOf(101)],
      [0, 0, 0, 1, 15, 15],
    );
    assert.equal(ZONES, 16);
  });
  it('zones carry their share and mean', () => {
    const { cells, lab } = labCells([
      [10, 1, 2, 30],
      [11, 3, 4, 10],
      [90, 0, 0, 60],
    ]);
    const zones = lightnessZones(lab, cells);
    assert.deepEqual(zones.used, [1, 14]);
    assert.deepEqual([zones.weight[1], zones.L[1], zones.a[1], zones.b[1]], [0.4, 10.25, 1.5, 2.5]);
  });
  it('has its ends and a histogram of whole L*', () => {
    const { cells, lab } = labCells([
      [0, 0, 0, 1],
      [49.6, 0, 0, 2],
      [100, 0, 0, 1],
    ]);
    const tone = toneOf(lab, cells)!;
    assert.deepEqual([tone.darkest, tone.lightest, tone.histogram.length], [0, 100, 101]);
    assert.deepEqual([tone.histogram[0], tone.histogram[50], tone.histogram[100]], [0.25, 0.5, 0.25]);
  });
  it('of nothing is none', () => assert.equal(toneOf(new Float32Array(0), labCells([]).cells), null));
});

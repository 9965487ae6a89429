import assert from 'node:assert/strict';
import { lightnessZones } from '../../../src/picture/judge/lightness';
import { zonesOf } from '../../../src/picture/judge/zones';
import type { Cells } from '../../../src/picture/pass/tally';

/** Zones of values that all have L* 50 to 54. */
function zones(channels: number, rows: { values: number[]; count: number; L?: number }[]) {
  const cells: Cells = {
    channels,
    length: rows.length,
    count: Float64Array.from(rows, r => r.count),
    values: Float32Array.from(rows.flatMap(r => r.values)),
  };
  const lab = Float32Array.from(rows.flatMap(r => [r.L ?? 52, 0, 0]));
  return zonesOf(lightnessZones(lab, cells), lab, cells, false);
}

describe('zones', () => {
  it('hold mean and covariance of the stored channels in 0-1', () => {
    const [zone, ...others] = zones(1, [
      { values: [102], count: 1, L: 51 },
      { values: [153], count: 3, L: 53 },
    ]);
    assert.equal(others.length, 0);
    assert.deepEqual([zone.L, zone.weight, zone.clusters.length], [52.5, 1, 1]);
    const [{ mean, covariance }] = zone.clusters;
    assert.ok(Math.abs(mean[0] - 0.55) < 1e-9);
    assert.ok(Math.abs(covariance[0] - 0.0075) < 1e-9);
  });

  it('stay whole where all scatter runs from dark to light', () => {
    const ramp = Array.from({ length: 40 }, (_, i) => ({
      values: [100 + i, 100 + i, 90 + i],
      count: 5,
      L: 50.5 + i / 10,
    }));
    assert.equal(zones(3, ramp)[0].clusters.length, 1);
  });

  it('split two kinds of separation of one lightness, and sum up to the whole', () => {
    const rows = [
      ...Array.from({ length: 10 }, (_, i) => ({ values: [0, 0, 0, 130 + i], count: 30, L: 50.5 + i / 5 })),
      ...Array.from({ length: 10 }, (_, i) => ({
        values: [90 + i, 75 + i, 75 + i, 60],
        count: 10,
        L: 50.5 + i / 5,
      })),
    ];
    const [{ clusters }] = zones(4, rows);
    assert.equal(clusters.length, 2);
    const [more, less] = [...clusters].sort((x, y) => y.weight - x.weight);
    assert.ok(Math.abs(more.weight - 0.75) < 1e-9 && Math.abs(less.weight - 0.25) < 1e-9);
    assert.ok(more.mean[0] < 0.001 && Math.abs(more.mean[3] - 134.5 / 255) < 1e-6);
    assert.ok(Math.abs(less.mean[0] - 94.5 / 255) < 1e-6);
  });

  it('are split in three at most', () => {
    const rows = [
      [255, 0, 0],
      [0, 255, 0],
      [0, 0, 255],
      [255, 255, 0],
      [0, 255, 255],
    ].map(values => ({ values, count: 10 }));
    const [{ clusters }] = zones(3, rows);
    assert.equal(clusters.length, 3);
    assert.ok(Math.abs(clusters.reduce((sum, c) => sum + c.weight, 0) - 1) < 1e-12);
  });
});

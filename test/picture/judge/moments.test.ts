import assert from 'node:assert/strict';
import { Moments } from '../../../src/picture/judge/moments';
import { random } from '../pass/random';

const near = (found: number, wanted: number) =>
  assert.ok(Math.abs(found - wanted) < 1e-9 * Math.max(1, Math.abs(wanted)), `${found}, not ${wanted}`);

describe('moments', () => {
  it('are mean and covariance by their definitions, group by group', () => {
    const next = random(5);
    const moments = new Moments(2, 3, 100);
    const rows = Array.from({ length: 500 }, (_, i) => ({
      group: i % 2,
      row: Float64Array.from([next() * 255, next() * 20, next() * 100]),
      weight: 1 + Math.floor(next() * 9),
    }));
    for (const { group, row, weight } of rows) moments.add(group, row, weight);
    for (const group of [0, 1]) {
      const own = rows.filter(r => r.group === group);
      const total = own.reduce((sum, r) => sum + r.weight, 0);
      const mean = (of: (row: Float64Array) => number) =>
        own.reduce((sum, r) => sum + r.weight * of(r.row), 0) / total;
      const means = [0, 1, 2].map(c => mean(row => row[c]));
      near(moments.weight(group), total);
      for (let i = 0; i < 3; i++) {
        near(moments.mean(group, i), means[i]);
        for (let j = 0; j < 3; j++)
          near(
            moments.covariance(group, i, j),
            mean(row => (row[i] - means[i]) * (row[j] - means[j])),
          );
      }
    }
  });

  it('find the widest scatter that the last value does not explain', () => {
    const moments = new Moments(1, 3, 0);
    // x follows the last value, y goes its own way
    for (let i = 0; i < 100; i++) moments.add(0, Float64Array.from([5 * i, (i * 37) % 10, i]), 1);
    const { axis, variance } = moments.acrossLast(0);
    assert.ok(Math.abs(axis[1]) > 0.999 && Math.abs(axis[0]) < 0.01, `${axis}`);
    assert.ok(Math.abs(variance - 8.25) < 0.3, `${variance}`);
  });
  it('find none where everything is explained', () => {
    const moments = new Moments(1, 3, 0);
    for (let i = 0; i < 100; i++) moments.add(0, Float64Array.from([2 * i, 3 * i, i]), 1);
    assert.ok(moments.acrossLast(0).variance < 1e-6);
  });
});

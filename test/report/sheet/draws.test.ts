import assert from 'node:assert/strict';
import { drawsOf } from '../../../src/report/sheet/draws';

describe('draws of possible orders', () => {
  it('are the same for the same series, and others for another', () => {
    assert.deepEqual(drawsOf(3, 10), drawsOf(3, 10));
    assert.notDeepEqual(drawsOf(3, 10), drawsOf(4, 10));
  });

  it('stand for the whole distribution: one of ten in each tenth of it', () => {
    for (let series = 0; series < 50; series++) {
      // share of a two-dimensional normal distribution that lies nearer to the centre: 1 - exp(-r^2 / 2)
      const tenths = drawsOf(series, 10).map(({ u, v }) =>
        Math.floor(10 * (1 - Math.exp(-(u * u + v * v) / 2))),
      );
      assert.deepEqual(tenths.sort(), [0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
      const picks = drawsOf(series, 10).map(({ pick }) => Math.floor(10 * pick));
      assert.deepEqual(picks.sort(), [0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
    }
  });

  it('have mean 0 and variance 1 over many series', () => {
    const all = Array.from({ length: 2000 }, (_, series) => drawsOf(series, 10)).flat();
    const mean = (value: (d: (typeof all)[number]) => number) =>
      all.reduce((sum, d) => sum + value(d), 0) / all.length;
    // standard error 1 / sqrt(20000) = 0.007, of a variance 0.01, of a product 0.007
    assert.ok(Math.abs(mean(d => d.u)) < 0.03);
    assert.ok(Math.abs(mean(d => d.v)) < 0.03);
    assert.ok(Math.abs(mean(d => d.u * d.v)) < 0.03);
    assert.ok(Math.abs(mean(d => d.u * d.u) - 1) < 0.04);
    assert.ok(Math.abs(mean(d => d.v * d.v) - 1) < 0.04);
  });
});

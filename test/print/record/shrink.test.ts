import assert from 'node:assert/strict';
import { shrink, tintAt } from '../../../src/print/record/shrink';

describe('shrinkage', () => {
  it('is the precision-weighted mean of prior and readings', () => {
    // textbook normal-normal model: prior N(0, 4), 3 readings of mean 3 with variance 1: mean 9 / 3.25, variance 1 / 3.25
    const { mean, variance, order } = shrink({ mean: 0, variance: 4 }, { mean: 3, n: 3, variance: 1 });
    assert.ok(Math.abs(mean - 9 / 3.25) < 1e-12);
    assert.ok(Math.abs(variance - 1 / 3.25) < 1e-12);
    assert.equal(order, 1);
  });
  it('goes to the readings with many orders, and leaves their own scatter', () => {
    const { mean, variance, order } = shrink({ mean: 0, variance: 2 }, { mean: 3, n: 1000, variance: 0.36 });
    assert.ok(Math.abs(mean - 3) < 0.01 && variance < 0.001 && order === 0.36);
  });
  it('never takes a reading for better than an instrument', () =>
    assert.ok(shrink({ mean: 0, variance: 2 }, { mean: 1, n: 1, variance: 0 }).order >= 0.0625));
});

describe('tint of the greys that were read', () => {
  const greys = [
    { L: 70, a: 2, b: 0 },
    { L: 30, a: -2, b: 1 },
  ];
  it('is linear between them and the nearest beyond', () => {
    assert.deepEqual(tintAt(greys, 50), { a: 0, b: 0.5 });
    assert.equal(tintAt(greys, 90).a, 2);
    assert.equal(tintAt(greys, 10).b, 1);
  });
  it('of one grey holds for all', () => assert.equal(tintAt([{ L: 50, a: 1, b: 2 }], 80).b, 2));
});

import assert from 'node:assert/strict';
import { covariances, deviations, meanMoves } from '../../src/print/scatter';

const causes = [
  { name: 'x', unit: '', order: 3, page: 4 },
  { name: 'y', unit: '', order: 1, page: 0 },
];

describe('scatter', () => {
  it('divides a cause between orders and pages by their variances', () => {
    const { order, page } = covariances(
      { drift: Float64Array.of(1, 2, 0, 0.5), shared: { a: 0, b: 0 } },
      causes,
    );
    assert.ok(Math.abs(order.aa - 9 / 25) < 1e-12 && Math.abs(page.aa - 16 / 25) < 1e-12);
    assert.ok(Math.abs(order.ab + page.ab - 2) < 1e-12);
    assert.ok(Math.abs(order.bb + page.bb - 4.25) < 1e-12);
  });
  it('counts what is no drift as shared by the order', () => {
    const { order, page } = covariances({ drift: new Float64Array(4), shared: { a: 1.5, b: 2 } }, causes);
    assert.deepEqual(deviations(order), { a: 1.5, b: 2 });
    assert.deepEqual(deviations(page), { a: 0, b: 0 });
  });
  it('is not divided by the number of zones: one draw is shared by all', () => {
    const zone = { weight: 0.25, moves: { drift: Float64Array.of(1, 0, 0, 1), shared: { a: 1, b: 0 } } };
    const mean = meanMoves([zone, zone, zone, zone]);
    assert.deepEqual([...mean.drift], [1, 0, 0, 1]);
    assert.deepEqual(mean.shared, { a: 1, b: 0 });
  });
  it('cancels where a cause moves lights one way and shadows the other', () => {
    const move = (a: number) => ({
      weight: 0.5,
      moves: { drift: Float64Array.of(a, 0), shared: { a: 0, b: 0 } },
    });
    assert.equal(meanMoves([move(1), move(-1)]).drift[0], 0);
  });
});

import assert from 'node:assert/strict';
import {
  covariances,
  deviationOf,
  deviations,
  meanMoves,
  meanScatter,
  spreadOf,
  whole,
  wholeSpread,
} from '../../src/print/scatter';

const causes = [
  { name: 'x', unit: '', house: 0, order: 3, page: 4 },
  { name: 'y', unit: '', house: 0, order: 1, page: 0 },
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
  it('counts what is no drift, and what a house keeps, as spread over houses and not over orders', () => {
    const { house, order, page } = covariances({ drift: Float64Array.of(2, 0), shared: { a: 1.5, b: 2 } }, [
      { name: 'shade of black', unit: '', house: 1, order: 0, page: 0 },
    ]);
    assert.deepEqual(deviations(house), { a: 2.5, b: 2 });
    assert.deepEqual(deviations(order), { a: 0, b: 0 });
    assert.deepEqual(deviations(page), { a: 0, b: 0 });
  });
  it('adds up over the levels to the whole', () => {
    const cause = { name: 'x', unit: '', house: 2, order: 3, page: 6 };
    assert.equal(deviationOf(cause), 7);
    const scatter = covariances({ drift: Float64Array.of(1, 2), shared: { a: 0, b: 0 } }, [cause]);
    const { aa, ab, bb } = whole(scatter);
    assert.ok(Math.abs(aa - 1) + Math.abs(ab - 2) + Math.abs(bb - 4) < 1e-12);
    const spread = spreadOf(scatter);
    assert.ok(Math.abs(spread.corr - 1) < 1e-12);
    assert.ok(Math.abs(wholeSpread(spread).b - 2) < 1e-12);
  });
  it('of several ways is their weighted mean', () => {
    const of = (a: number) =>
      covariances({ drift: Float64Array.of(a, 0), shared: { a: 0, b: 0 } }, [causes[1]]);
    const mean = meanScatter([
      { weight: 0.25, scatter: of(2) },
      { weight: 0.75, scatter: of(0) },
    ]);
    assert.deepEqual(mean.order, { aa: 1, ab: 0, bb: 0 });
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

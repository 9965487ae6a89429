import assert from 'node:assert/strict';
import { ORDERS, orderDraws } from '../../src/print/order-draws';

describe('possible orders', () => {
  for (const causes of [2, 5, 8])
    it(`of ${causes} causes have a variance of 1 each, and do not go together at all`, () => {
      const draws = orderDraws(causes);
      assert.equal(draws.length, causes);
      draws.forEach((one, i) => {
        draws.forEach((other, j) => {
          const product = one.reduce((sum, value, order) => sum + value * other[order], 0) / ORDERS;
          assert.ok(Math.abs(product - (i === j ? 1 : 0)) < 1e-9, `${i} ${j}: ${product}`);
        });
      });
    });
  it('are normal: about 68 and 95 of 100 within one and two standard deviations', () => {
    orderDraws(8).forEach((draw, i) => {
      const within = (sd: number) => draw.filter(value => Math.abs(value) < sd).length / ORDERS;
      assert.ok(Math.abs(within(1) - 0.683) < 0.15, `${i}: ${within(1)}`);
      assert.ok(Math.abs(within(2) - 0.954) < 0.05, `${i}: ${within(2)}`);
    });
  });
  it('are always the same', () => assert.equal(orderDraws(8), orderDraws(8)));
});

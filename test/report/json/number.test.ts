import assert from 'node:assert/strict';
import { canonical, round, sum } from '../../../src/report/json/number';

describe('numbers of a report', () => {
  it('are rounded, and zero has no sign', () => {
    assert.equal(round(1 / 3), 0.333333);
    assert.ok(Object.is(round(-1e-9), 0));
  });
  it('add up as they are printed', () => {
    assert.deepEqual(sum({ a: 0.1, b: -0.2 }, { a: 0.2, b: 0.2 }), { a: 0.3, b: 0 });
  });
  it('leave out what is undefined, and order keys at every depth', () => {
    assert.equal(
      JSON.stringify(canonical({ b: undefined, c: [{ z: 1, a: Number.NaN }], a: 'x' })),
      '{"a":"x","c":[{"a":null,"z":1}]}',
    );
  });
});

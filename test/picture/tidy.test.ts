import assert from 'node:assert/strict';
import { tidy } from '../../src/picture/tidy';

describe('numbers of the facts', () => {
  it('keep seven digits, whole numbers all of theirs', () =>
    assert.deepEqual(tidy({ a: [1 / 3, 123456789, 1234.56789], b: null, c: 'x', d: true }), {
      a: [0.3333333, 123456789, 1234.568],
      b: null,
      c: 'x',
      d: true,
    }));
  it('are never minus nothing', () => {
    assert.ok(Object.is(tidy(-0), 0));
    assert.ok(Object.is(tidy(-1e-12), 0));
  });
});

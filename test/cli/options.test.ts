import assert from 'node:assert/strict';
import { numbers, wholeFrom } from '../../src/cli/options';

describe('values of options', () => {
  it('are numbers in their range', () => {
    assert.deepEqual(numbers(4, 100)('0, 50,100,2.5'), [0, 50, 100, 2.5]);
    for (const wrong of ['1,2,3', '1,2,3,101', '1,2,3,-1', '1,2,3,x', '1,2,3,', ''])
      assert.throws(() => numbers(4, 100)(wrong), /4 numbers from 0 to 100/, wrong);
    assert.throws(() => numbers(1, 255)('256'), /a number from 0 to 255/);
  });
  it('are whole numbers', () => {
    assert.equal(wholeFrom(0)('0'), 0);
    for (const wrong of ['-1', '1.5', 'x', '']) assert.throws(() => wholeFrom(0)(wrong), /whole number/);
    assert.throws(() => wholeFrom(1)('0'), /from 1 up/);
  });
});

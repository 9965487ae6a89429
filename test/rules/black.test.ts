import assert from 'node:assert/strict';
import { blackWords, isOpen } from '../../src/rules/black';

describe('the black of an encoding in words', () => {
  it('is one number where every way prints it, and from the deepest to the weakest otherwise', () => {
    assert.equal(blackWords({ blackDeepest: 15.2, blackWeakest: 15.2 }), '15');
    assert.equal(blackWords({ blackDeepest: 10.6, blackWeakest: 15.2 }), '11 to 15');
    assert.equal(blackWords({ blackDeepest: 14.6, blackWeakest: 15.4 }), '15');
  });
  it('is open where the ways differ by what is told', () => {
    assert.equal(isOpen({ blackDeepest: 14.6, blackWeakest: 15.4 }), false);
    assert.equal(isOpen({ blackDeepest: 10.6, blackWeakest: 15.2 }), true);
  });
});

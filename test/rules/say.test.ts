import assert from 'node:assert/strict';
import { say } from '../../src/rules/say';

describe('say', () => {
  it('puts named arguments into a template', () =>
    assert.equal(say('{n} of {all}, {n} times', { n: 3, all: 'four' }), '3 of four, 3 times'));
  it('leaves no blank where the last argument is empty', () =>
    assert.equal(say('Done. {more}', { more: '' }), 'Done.'));
  it('does not read an argument as a template', () => assert.equal(say('{a}', { a: '{b} $&' }), '{b} $&'));
});

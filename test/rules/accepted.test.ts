import assert from 'node:assert/strict';
import { takes } from '../../src/rules/accepted';
import { picture, target } from './support/pictures';

describe('what a target takes', () => {
  it('is everything where nobody said, or said nothing', () => {
    assert.ok(takes(target('inkjet'), picture('three-ink')));
    assert.ok(takes(target('inkjet', { encodings: [] }), picture('three-ink')));
  });
  it('is what it names', () => {
    const only = target('inkjet', { encodings: ['black-only'] });
    assert.ok(takes(only, picture('black-only')));
    assert.ok(!takes(only, picture('rgb-residual')));
  });
});

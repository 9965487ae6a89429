import assert from 'node:assert/strict';
import { paperKindOfProfile, paperKindOfTarget } from '../../../src/rules/profile-mismatch/paper-kind';
import { target } from '../support/pictures';

describe('the paper that a profile was made for', () => {
  // data set -> paper: headers of the characterisation data, and ISO 12647-2's paper types
  const known: [string, 'coated' | 'uncoated' | null][] = [
    ['Coated FOGRA39 (ISO 12647-2:2004)', 'coated'],
    ['FOGRA51', 'coated'],
    ['Uncoated FOGRA29', 'uncoated'],
    ['FOGRA52 wood-free', 'uncoated'],
    ['A press, CRPC6', 'coated'],
    ['CRPC3', 'uncoated'],
    ['An uncoated stock of ours', 'uncoated'],
    ['A press of ours', null],
    ['FOGRA520', null],
  ];
  for (const [description, kind] of known)
    it(`${description}: ${kind ?? 'not said'}`, () => assert.equal(paperKindOfProfile(description), kind));

  it('and the one that it is printed on', () => {
    assert.equal(paperKindOfTarget(target('offset-uncoated')), 'uncoated');
    assert.equal(paperKindOfTarget(target('liquid-toner')), 'coated');
    assert.equal(paperKindOfTarget(target('inkjet', { paper: 'uncoated-warm' })), 'uncoated');
    assert.equal(paperKindOfTarget(target('inkjet', { paper: { lab: [95, 0, 0] } })), null);
  });
});

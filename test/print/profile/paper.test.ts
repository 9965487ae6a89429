import assert from 'node:assert/strict';
import { paperOf } from '../../../src/print/papers';
import { profilePaper } from '../../../src/print/profile/paper';
import { readPressProfile } from '../../../src/print/profile/read';
import { fourInk, printerGrey } from './profiles';

describe('the paper of a print by the house’s profile', () => {
  const listed = paperOf('gloss-coated-bright');
  const measured = paperOf({ lab: [93, 0, 2] });

  it('is the profile’s, with the listed one’s brightener', async () => {
    const paper = profilePaper(await readPressProfile(fourInk()), listed);
    assert.ok(Math.abs(paper.white[0] - listed.white[0]) > 1);
    assert.equal(paper.brightener, 'moderate');
    assert.ok(paper.spread.b < listed.spread.b);
  });

  it('is the user’s own measurement first', async () => {
    assert.deepEqual(profilePaper(await readPressProfile(fourInk()), measured).white, [93, 0, 2]);
  });

  it('is the target’s where the profile knows none', async () => {
    assert.deepEqual(profilePaper(await readPressProfile(printerGrey()), listed).white, listed.white);
  });
});

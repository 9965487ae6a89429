import assert from 'node:assert/strict';
import { fittingProfile, profileName, untagged } from '../../src/rules/profiles';
import { picture, profile } from './support/pictures';

const named = (description: string | null) =>
  profileName(
    picture('rgb-neutral', { facts: { profile: description === null ? null : profile(description, 'rgb') } })
      .facts,
  );

describe('profile names', () => {
  it('take the many descriptions of sRGB, and no profile on RGB, for one', () => {
    for (const name of ['sRGB IEC61966-2.1', 'sRGB', null]) assert.equal(named(name), 'sRGB');
    assert.equal(named('eciRGB v2'), 'eciRGB v2', 'ends in srgb only by chance of letters');
    assert.equal(named(' '), 'a profile without a name');
  });
  it('know none for a grey or ink file without a profile', () =>
    assert.equal(profileName(picture('single-channel').facts), null));
  it('go by no profile that is for other channels', () => {
    const { facts } = picture('single-channel', { facts: { profile: profile('Wide', 'rgb') } });
    assert.deepEqual([fittingProfile(facts), profileName(facts)], [null, null]);
    const fits = picture('single-channel', { facts: { profile: profile('Dot gain', 'grey') } });
    assert.equal(fittingProfile(fits.facts)?.description, 'Dot gain');
  });
  it('do not call Lab untagged', () => {
    assert.ok(!untagged(picture('lab-neutral').facts));
    assert.ok(untagged(picture('single-channel').facts));
  });
});

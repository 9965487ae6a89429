import assert from 'node:assert/strict';
import fs from 'node:fs';
import { profileFacts } from '../../src/colour/profile-facts';
import { need } from '../tools/need';

const bytes = (name: string, apt: string) => fs.readFileSync(need(`/usr/share/color/icc/${name}`, apt));

describe('facts of a profile', () => {
  it('a display profile: its name, class, and a grey axis that is grey', async () => {
    const facts = await profileFacts(bytes('sRGB.icc', 'icc-profiles-free'));
    assert.match(facts.description, /sRGB/);
    assert.deepEqual([facts.space, facts.class], ['rgb', 'display']);
    assert.ok(facts.greyAxisChroma! < 0.1, `${facts.greyAxisChroma}`);
  });

  it('a press profile has no grey axis of its own', async () => {
    const facts = await profileFacts(bytes('ghostscript/default_cmyk.icc', 'libgs-common'));
    assert.deepEqual([facts.space, facts.class, facts.greyAxisChroma], ['cmyk', 'output', null]);
  });

  it('a grey profile', async () => {
    const facts = await profileFacts(bytes('Gray.icc', 'icc-profiles-free'));
    assert.equal(facts.space, 'grey');
    assert.ok(facts.greyAxisChroma! < 0.1);
  });

  it('measures an axis that is off, in a* and in b*', async () => {
    const spoiled = (primary: number, part: number, value: number) => {
      const profile = Uint8Array.from(bytes('sRGB.icc', 'icc-profiles-free'));
      const view = new DataView(profile.buffer);
      for (let at = 132; at < 132 + view.getUint32(128) * 12; at += 12)
        if (view.getUint32(at) === primary)
          view.setUint32(view.getUint32(at + 4) + 8 + part * 4, value * 65536);
      return profile;
    };
    const [rXYZ, bXYZ] = [0x7258595a, 0x6258595a];
    assert.ok((await profileFacts(spoiled(rXYZ, 0, 0.5))).greyAxisChroma! > 5);
    assert.ok((await profileFacts(spoiled(bXYZ, 2, 0.8))).greyAxisChroma! > 5);
  });

  it('says what is wrong with one that cannot be used', async () => {
    await assert.rejects(profileFacts(bytes('sRGB.icc', 'icc-profiles-free').subarray(0, 200)), /cut short/);
  });
});

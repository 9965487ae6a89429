import assert from 'node:assert/strict';
import type { Encoding, PictureFacts } from '../../../src/shared/picture';
import { judged } from '../support/judged';
import { type PictureOptions, picture, profile, target } from '../support/pictures';

const found = (encoding: Encoding, facts: Partial<PictureFacts>, options: PictureOptions = {}) =>
  judged([picture(encoding, { ...options, facts })], 'profile-mismatch').pictures[0];
const coated = { profile: profile('Coated FOGRA39', 'cmyk') };
const uncoated = [target('offset-uncoated')];

describe('profile-mismatch', () => {
  describe('passes', () => {
    it('a separation for the paper that it is printed on', () =>
      assert.equal(found('four-channel', coated, { targets: [target('offset-coated')] }).length, 0));
    it('black ink alone, and a house that separates anew', () => {
      assert.equal(found('black-only', coated, { targets: uncoated }).length, 0);
      const anew = [target('offset-uncoated', { route: 'separated' })];
      assert.equal(found('four-channel', coated, { targets: anew }).length, 0);
    });
    it('a profile with a neutral grey axis, or of which it is not known', () => {
      for (const greyAxisChroma of [0.3, null])
        assert.equal(
          found('rgb-neutral', { profile: { ...profile('Wide', 'rgb'), greyAxisChroma } }).length,
          0,
        );
    });
  });
  describe('fails', () => {
    it('a separation for coated paper on uncoated: too dark; and the other way round', () => {
      const [finding] = found('four-channel', coated, { targets: uncoated });
      assert.equal(finding.severity, 'warning');
      assert.match(
        finding.message,
        /prints too dark, .*separated for coated paper \(profile "Coated FOGRA39"\), and it is printed on uncoated/,
      );
      const light = found(
        'four-channel',
        { profile: profile('FOGRA52', 'cmyk') },
        { targets: [target('offset-coated')] },
      );
      assert.match(light[0].message, /prints too light/);
    });
    it('R = G = B that its profile does not call neutral', () => {
      const scanner = { ...profile('A scanner', 'rgb'), greyAxisChroma: 3.4 };
      assert.match(found('rgb-neutral', { profile: scanner })[0].message, /off by up to C\* 3\.4/);
    });
    it('one grey channel with a profile for RGB, with what ends it', () => {
      const wide = { profile: profile('Wide RGB', 'rgb') };
      const [finding] = found('single-channel', wide);
      assert.deepEqual([finding.severity, finding.data.what], ['warning', 'channels']);
      assert.match(finding.message, /"Wide RGB" is for RGB.*Embed a grey profile/);
      assert.equal(found('rgb-neutral', wide).length, 0);
      const grey = { profile: profile('Dot gain', 'grey') };
      assert.equal(found('single-channel', grey).length, 0);
    });
    it('a profile that cannot be used', () => {
      const remarks: PictureFacts['remarks'] = [{ code: 'bad-profile', text: 'Its profile is cut short.' }];
      const message = (encoding: Encoding) => found(encoding, { remarks })[0].message;
      assert.match(
        message('single-channel'),
        /^This picture may print lighter or darker than it looks here, .* cannot be used\. Its profile is cut short\. Embed/,
      );
      assert.match(message('rgb-toned'), /^This picture may print lighter, darker or in other colours/);
    });
    it('first what it does in print, and no capital in mid-sentence', () => {
      const remarks: PictureFacts['remarks'] = [
        { code: 'bad-profile', text: 'The embedded profile is damaged; it was not used.' },
      ];
      const all = [
        found('rgb-neutral', { remarks }),
        found('single-channel', { remarks }),
        found('single-channel', { profile: profile('Wide RGB', 'rgb') }),
      ];
      for (const [{ message }] of all) {
        assert.match(message, /^This picture may print /);
        assert.doesNotMatch(message, /[:;,] The /);
      }
    });
  });
});

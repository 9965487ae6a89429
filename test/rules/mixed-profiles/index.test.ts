import assert from 'node:assert/strict';
import { judged } from '../support/judged';
import { type PictureOptions, picture, pictures, profile, target } from '../support/pictures';

const carrying = (n: number, description: string | null, options: PictureOptions = {}) =>
  pictures(n, 'rgb-neutral', {
    ...options,
    facts: { profile: description === null ? null : profile(description, 'rgb') },
  });
const found = (...groups: ReturnType<typeof pictures>[]) => judged(groups.flat(), 'mixed-profiles').book;

describe('mixed-profiles', () => {
  describe('passes', () => {
    it('one profile', () => assert.equal(found(carrying(3, 'Wide')).length, 0));
    it('sRGB by its many names, and no profile at all', () =>
      assert.equal(
        found(carrying(2, 'sRGB IEC61966-2.1'), carrying(2, 'sRGB built-in'), carrying(2, null)).length,
        0,
      ));
    it('another profile in another part, or for another intent in colour', () =>
      assert.equal(
        found(
          carrying(2, 'Wide'),
          carrying(2, 'Other', { part: 'cover' }),
          carrying(2, 'X', { intent: 'colour' }),
        ).length,
        0,
      ));
    it('pictures that are to be stored in another way, and get another profile then', () => {
      const taking = { targets: [target('offset-coated', { encodings: ['single-channel'] })] };
      assert.equal(found(carrying(2, 'Wide', taking), carrying(2, 'sRGB', taking)).length, 0);
      const greys = pictures(9, 'single-channel', { targets: [] });
      const bare = { targets: [] };
      assert.equal(found(greys, carrying(1, 'Wide', bare), carrying(1, 'sRGB', bare)).length, 0);
      assert.equal(found(carrying(1, 'Wide', bare), carrying(1, 'sRGB', bare)).length, 1);
    });
  });
  describe('fails', () => {
    it('those that stay, and none that is to be another file', () => {
      const inks = { targets: [target('offset-coated')] };
      const [book] = found(carrying(5, 'sRGB', inks), carrying(1, 'Wide', inks), [
        picture('rgb-toned', {
          ...inks,
          path: 'toned.tif',
          tone: [6, 12],
          facts: { profile: profile('Odd', 'rgb') },
        }),
      ]);
      assert.match(book.message, /by 2 different profiles, sRGB \(5\) and Wide \(1\)\./);
      assert.doesNotMatch(JSON.stringify(book.data), /toned\.tif/);
    });
    it('several, in one note for the book that counts them and names the one that leaves least to do', () => {
      const book = found(carrying(2, 'Wide'), carrying(5, 'sRGB'), carrying(1, null));
      assert.equal(book.length, 1);
      assert.equal(book[0].severity, 'note');
      assert.match(
        book[0].message,
        /are read by 2 different profiles, sRGB \(6, 1 of them taken for it, since it carries none\) and Wide \(2\)\..* to one in the program that exported them; sRGB leaves the fewest to export\. "evengrey convert" leaves/,
      );
    });
    it('by how much a picture moves whose profile is not read, where that is much', () => {
      const grey = (name: string, value?: number) => {
        const [one] = pictures(1, 'single-channel', {
          tones: [76],
          facts: { profile: profile(name, 'grey') },
        });
        if (value !== undefined) one.facts.zones[0].clusters[0].mean = [value];
        return [{ ...one, path: `${name}.tif` }];
      };
      const [book] = found(grey('linear', 0.5), grey('sGrey'));
      assert.match(
        book.message,
        /Where profiles are not read, linear\.tif prints darker by up to about L\* 23\./,
      );
      assert.doesNotMatch(found(grey('other'), grey('sGrey'))[0].message, /not read/);
    });
    it('a profile beside pictures that carry none, without saying of these that they carry one', () => {
      const [book] = found(carrying(3, null), carrying(1, 'Wide'));
      assert.match(book.message, /, sRGB \(3, taken for it, since they carry none\) and Wide \(1\)\./);
    });
    it('several of one grey channel, which a conversion brings to one; none counts that is for other channels', () => {
      const grey = (n: number, name: string, space: 'grey' | 'rgb') =>
        pictures(n, 'single-channel', { facts: { profile: profile(name, space) } });
      assert.equal(found(grey(2, 'Dot gain', 'grey'), grey(2, 'Wide', 'rgb')).length, 0);
      const [book] = found(grey(2, 'Dot gain', 'grey'), grey(2, 'Gamma 2.2', 'grey'));
      assert.match(book.message, /"evengrey convert --to single-channel --profile FILE" does/);
    });
  });
});

import assert from 'node:assert/strict';
import type { Encoding } from '../../../src/shared/picture';
import { judged } from '../support/judged';
import { type PictureOptions, pictures, profile, target } from '../support/pictures';

const bare = (n: number, encoding: Encoding, options: PictureOptions = {}) =>
  pictures(n, encoding, { ...options, facts: { assumed: 'the sRGB curve' } });
const tagged = (n: number, encoding: 'single-channel' | 'rgb-neutral') =>
  pictures(n, encoding, {
    facts: { profile: profile('A profile', encoding === 'rgb-neutral' ? 'rgb' : 'grey') },
  });

describe('untagged', () => {
  describe('passes', () => {
    it('pictures with a profile', () =>
      assert.deepEqual(
        judged([...tagged(2, 'rgb-neutral'), ...tagged(2, 'single-channel')], 'untagged').named,
        [],
      ));
    it('R = G = B where no picture of its part carries a profile', () => {
      const other = tagged(1, 'rgb-neutral').map(p => ({ ...p, part: 'cover' }));
      const { named, book } = judged([...bare(60, 'rgb-neutral'), ...other], 'untagged');
      assert.deepEqual([named, book], [[], []]);
    });
    it('what no target takes as it is, and is another file soon', () => {
      const { targets } = bare(1, 'rgb-neutral', { targets: [target('silver-halide')] })[0];
      const accepting = (encodings: Encoding[]) => targets.map(each => ({ ...each, encodings }));
      const named = (encodings: Encoding[]) =>
        judged(bare(1, 'single-channel', { targets: accepting(encodings) }), 'untagged').named.length;
      assert.deepEqual([named(['rgb-neutral']), named(['single-channel'])], [0, 1]);
    });
    it('what is to be another encoding, with a profile of its own then', () => {
      const book = [...tagged(4, 'rgb-neutral'), ...bare(1, 'single-channel')];
      assert.deepEqual(judged(book, 'untagged').named, []);
      const alone = [...tagged(4, 'rgb-neutral'), ...bare(1, 'single-channel', { targets: [] })];
      assert.equal(judged(alone, 'untagged').named.length, 1, 'nothing is known of where it is printed');
    });
    it('what cannot be read', () => {
      const [broken] = bare(1, 'rgb-neutral');
      broken.facts.encoding = 'unreadable';
      broken.facts.unreadable = { reason: 'truncated', text: 'Cut short.' };
      assert.deepEqual(judged([...tagged(2, 'rgb-neutral'), broken], 'untagged').named, []);
    });
    it('inks that go to the press as they are', () =>
      assert.deepEqual(
        judged(bare(1, 'black-only', { targets: [target('offset-coated')] }), 'untagged').named,
        [],
      ));
    it('Lab, one bit and line art', () => {
      const book = [
        ...bare(1, 'lab-neutral'),
        ...bare(1, 'bilevel'),
        ...bare(1, 'single-channel', { intent: 'line' }),
      ];
      assert.deepEqual(judged(book, 'untagged').named, []);
    });
  });
  describe('fails', () => {
    it('one grey channel, with what was assumed', () => {
      const [[finding]] = judged(bare(1, 'single-channel'), 'untagged').pictures;
      assert.equal(finding.severity, 'note');
      assert.match(finding.message, /here the sRGB curve/);
    });
    it('the odd ones beside neighbours with a profile', () => {
      for (const encoding of ['single-channel', 'rgb-neutral'] as const) {
        const { named, pictures: lists } = judged([...tagged(9, encoding), ...bare(2, encoding)], 'untagged');
        assert.equal(named.length, 2);
        assert.match(lists[10][0].message, /they carry A profile/);
      }
    });
    it('one odd profile as no example to follow', () => {
      const { pictures: lists } = judged(
        [...tagged(1, 'single-channel'), ...bare(3, 'single-channel')],
        'untagged',
      );
      assert.match(lists[1][0].message, /^This picture may print lighter or darker than it looks here/);
      assert.doesNotMatch(lists[1][0].message, /neighbour/);
    });
    it('a file of several pages as one picture', () => {
      const pages = bare(2, 'single-channel').map(page => ({ ...page, path: 'pages.tif' }));
      const { book } = judged([...bare(8, 'single-channel'), ...pages], 'untagged');
      assert.match(book[0].message, /9 of 9 pictures carry no profile/);
    });
    it('inks for a process that has none with the way to end it, many too', () => {
      const { book } = judged(bare(5, 'black-only'), 'untagged');
      assert.match(book[0].message, /where they are exported, or save them as rgb-neutral, or ask/);
    });
    it('many alike in one note for the book', () => {
      const { named, book } = judged(bare(60, 'single-channel'), 'untagged');
      assert.deepEqual(named, []);
      assert.match(book[0].message, /60 of 60 pictures carry no profile/);
    });
    it('many odd ones in one note for the book too, which says what the others carry and what ends it', () => {
      const { named, book } = judged(
        [...tagged(20, 'single-channel'), ...bare(9, 'single-channel')],
        'untagged',
      );
      assert.deepEqual([named, book.length], [[], 1]);
      assert.match(book[0].message, /9 of 29 pictures carry no profile, the others A profile, so/);
      assert.match(book[0].message, /"evengrey convert --to single-channel --profile FILE" does/);
    });
    it('never the profile of neighbours that is for other channels', () => {
      const misfits = pictures(3, 'single-channel', { facts: { profile: profile('Wide RGB', 'rgb') } });
      const { named, pictures: lists } = judged([...misfits, ...bare(1, 'single-channel')], 'untagged');
      assert.equal(named.length, 1);
      assert.doesNotMatch(lists[3][0].message, /neighbours|Wide RGB/);
    });
    it('inks on a process that has no such inks', () => {
      const [[finding]] = judged(bare(1, 'black-only'), 'untagged').pictures;
      assert.match(finding.message, /silver halide has no such inks/);
    });
    it('any R = G = B if the settings ask for it', () =>
      assert.equal(
        judged(bare(1, 'rgb-neutral'), 'untagged', { untagged: ['note', { rgb: 'always' }] }).named.length,
        1,
      ));
  });
});

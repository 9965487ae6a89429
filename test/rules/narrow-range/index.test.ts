import assert from 'node:assert/strict';
import type { RuleSettings } from '../../../src/rules/settings';
import type { Encoding } from '../../../src/shared/picture';
import { judged } from '../support/judged';
import { picture, pictures, target } from '../support/pictures';

const misty = [60, 65, 70, 80, 88];
const found = (tones: number[]) => judged([picture('rgb-neutral', { tones })], 'narrow-range');

describe('narrow-range', () => {
  describe('passes', () => {
    it('a full range', () => assert.deepEqual(found([5, 30, 50, 70, 96]).named, []));
    it('a process with a deep black', () =>
      assert.deepEqual(judged(pictures(3, 'rgb-neutral'), 'narrow-range').book, []));
    it('one flat encoding among others: that is not the process', () => {
      const targets = [target('offset-uncoated', { route: 'inks', paper: 'uncoated' })];
      const settings: RuleSettings = { 'narrow-range': ['note', { process: 66 }] };
      const both = [picture('black-only', { targets }), picture('rgb-neutral', { targets })];
      assert.equal(judged(both.slice(0, 1), 'narrow-range', settings).book.length, 1);
      assert.equal(judged(both, 'narrow-range', settings).book.length, 0);
    });
    it('pictures of practically one tone', () => {
      for (const tones of [[100], [50, 52]]) assert.deepEqual(found(tones).named, []);
    });
    it('one bit', () =>
      assert.deepEqual(judged([picture('bilevel', { tones: misty })], 'narrow-range').named, []));
  });
  describe('fails', () => {
    it('a veiled picture, and says which end is missing', () => {
      const [[finding]] = found(misty).pictures;
      assert.equal(finding.severity, 'note');
      assert.match(finding.message, /between L\* 60 and L\* 88 of the file, so it has no black\./);
      assert.match(finding.message, /prints pale .* meant to be light, as mist and snow are/);
      assert.match(found([47, 60, 78]).pictures[0][0].message, /neither a black nor a white/);
      assert.match(found([40, 50, 60]).pictures[0][0].message, /neither a black nor a white/);
    });
    it('a dark picture as dark, without a word of flatness or haze', () => {
      const [[{ message }]] = found([0, 5, 10, 26]).pictures;
      assert.match(
        message,
        /^This picture prints dark all over .*between L\* 0 and L\* 26 .*no white\. .*meant to be dark, as a night is\.$/,
      );
      assert.doesNotMatch(message, /flat|haze/);
    });
    it('in spite of a few specks at either end', () => {
      const tones = [...Array(300).fill(60), ...Array(300).fill(70), 0, 100];
      assert.equal(found(tones).named.length, 1);
    });
    it('a process, by what the print house takes: one that it refuses lends no deeper black to the others', () => {
      const settings: RuleSettings = { 'narrow-range': ['note', { process: 66 }] };
      const book = (encodings: Encoding[] | undefined) => {
        const targets = [target('offset-uncoated', { route: 'inks', paper: 'uncoated', encodings })];
        const both = [picture('black-only', { targets }), picture('rgb-neutral', { targets })];
        return judged(both, 'narrow-range', settings).book.length;
      };
      assert.deepEqual([book(['black-only']), book(['rgb-neutral']), book(undefined)], [1, 0, 0]);
      assert.equal(book(['lab-neutral']), 0, 'of all, where it takes none of them');
    });
    it('uncoated paper, once for the book', () => {
      // black ink alone L* 31 and paper L* 95 in FOGRA47 (characterisation data)
      const targets = [target('offset-uncoated', { route: 'black-plate' })];
      const { named, book } = judged(pictures(9, 'single-channel', { targets }), 'narrow-range');
      assert.deepEqual(named, []);
      assert.equal(book.length, 1);
      assert.match(book[0].message, /black is about L\* 3\d and the paper L\* 95/);
    });
    it('no surer of the black than the forecast: from the deepest way of the house to the weakest', () => {
      const open = [target('offset-uncoated')];
      const settings: RuleSettings = { 'narrow-range': ['note', { process: 80 }] };
      const book = pictures(1, 'rgb-neutral', { targets: open });
      const [{ blackDeepest, blackWeakest }] = book[0].forecasts.map(({ range }) => range);
      assert.ok(blackWeakest - blackDeepest > 1, 'nobody said how it is printed');
      const [{ message }] = judged(book, 'narrow-range', settings).book;
      const [, from, to] = /black is about L\* (\d+) to (\d+), by how the house prints it, and/.exec(
        message,
      )!;
      assert.deepEqual([+from, +to], [blackDeepest, blackWeakest].map(Math.round));
    });
  });
});

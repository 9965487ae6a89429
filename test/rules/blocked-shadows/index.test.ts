import assert from 'node:assert/strict';
import { judged } from '../support/judged';
import { picture, pictures, target } from '../support/pictures';

/** Uncoated paper: its black prints near L* 31 (FOGRA47, FOGRA52 solids: 31, 32.7), so the file's deepest shades go. */
const targets = [target('offset-uncoated', { route: 'separated' })];
const dark = [2, 4, 5, 6, 7, 8, 20, 30, 40, 50];
const light = [20, 30, 40, 50, 60, 70, 80];
const drawn = [0, 0, 0, 0, 0, 40, 50, 60, 70, 80];
const found = (tones: number[]) => judged([picture('rgb-neutral', { targets, tones })], 'blocked-shadows');

describe('blocked-shadows', () => {
  describe('passes', () => {
    it('a picture without deep shadows', () => assert.deepEqual(found(light).named, []));
    it('black that is plain black in the file already', () => assert.deepEqual(found(drawn).named, []));
    it('the same dark picture on a process with a deep black', () => {
      const on = [target('offset-coated', { route: 'separated' })];
      const tones = [12, 14, 16, 18, 20, 40, 50];
      assert.deepEqual(judged([picture('rgb-neutral', { targets: on, tones })], 'blocked-shadows').named, []);
    });
    it('one bit and line art', () => {
      const book = [
        picture('bilevel', { targets, tones: dark }),
        picture('rgb-neutral', { targets, tones: dark, intent: 'line' }),
      ];
      assert.deepEqual(judged(book, 'blocked-shadows').named, []);
    });
  });
  describe('fails', () => {
    it('shades that the process cannot tell from its black', () => {
      const [[finding]] = found(dark).pictures;
      assert.equal(finding.severity, 'note');
      assert.match(finding.message, /uncoated offset prints them like its black \(L\* \d\d\)/);
      assert.ok((finding.data.own as number) >= 0.5);
    });
    it('with the share that is plain black in the file told apart', () => {
      const [[finding]] = found([0, 0, ...dark]).pictures;
      assert.match(finding.message, /Another 17 % is plain black in the file\./);
    });
    it('most of a book in one note that names the worst first', () => {
      const worst = picture('rgb-neutral', { targets, tones: dark.slice(0, 7), path: 'worst.tif' });
      const { named, book } = judged(
        [...pictures(9, 'rgb-neutral', { targets, tones: dark }), worst],
        'blocked-shadows',
      );
      assert.deepEqual(named, []);
      assert.equal(book.length, 1);
      assert.match(book[0].message, /in 10 of 10 pictures/);
      assert.match(book[0].message, /Most: worst\.tif, /);
    });
    it('the few dark ones of a light book one by one', () => {
      const book = [
        ...pictures(9, 'rgb-neutral', { targets, tones: light }),
        picture('rgb-neutral', { targets, tones: dark }),
      ];
      assert.equal(judged(book, 'blocked-shadows').named.length, 1);
    });
  });
});

import assert from 'node:assert/strict';
import { lightness } from '../../../src/colour/lab';
import { measuredPress } from '../../../src/colour/press';
import type { Encoding } from '../../../src/shared/picture';
import { judged } from '../support/judged';
import { picture, pictures, target } from '../support/pictures';

/** Uncoated paper: its black prints near L* 31 (FOGRA47, FOGRA52 solids: 31, 32.7), so the file's deepest shades go. */
const targets = [target('offset-uncoated', { route: 'separated' })];
const dark = [2, 4, 5, 6, 7, 8, 20, 30, 40, 50];
const light = [20, 30, 40, 50, 60, 70, 80];
const drawn = [0, 0, 0, 0, 0, 40, 50, 60, 70, 80];
const found = (tones: number[]) => judged([picture('rgb-neutral', { targets, tones })], 'blocked-shadows');

/** Ink values kept, as a press prints them: coated black alone at L* 15 (TR 006), where no file reaches L* 0. */
const kept = [target('offset-coated', { route: 'inks' })];
/** L* of ink values in the file, relative to the paper, by the data that such a file is read with. */
function lightnessOf(inks: number[]): number {
  const [paper, print] = [[0, 0, 0, 0], inks].map(values => {
    const xyz = new Float64Array(3);
    measuredPress('TR006').xyz(values, xyz);
    return xyz[1];
  });
  return lightness((100 * print) / paper);
}
/** A picture of these ink values, each on the same area. */
function ofInks(encoding: Encoding, values: number[][], targets = kept) {
  const next = values.values();
  const tones = values.map(lightnessOf);
  return picture(encoding, { targets, tones, inks: () => next.next().value! });
}
const black = (...tones: number[]) => tones.map(K => [0, 0, 0, K]);
/** A separation with much black, up to an ink total of 305 %. */
const four = (...depths: number[]) => depths.map(d => [0.75 * d, 0.65 * d, 0.65 * d, d]);

describe('blocked-shadows', () => {
  describe('passes', () => {
    it('a picture without deep shadows', () => assert.deepEqual(found(light).named, []));
    it('black that is plain black in the file already', () => assert.deepEqual(found(drawn).named, []));
    it('the darkest tone of the file, whatever it is', () =>
      assert.deepEqual(found([4, 4, 4, 4, 5, 40, 50, 60]).named, []));
    it('solid black ink, alone or with others, which prints as black', () => {
      for (const solid of [
        ofInks('black-only', black(1, 1, 1, 0.6, 0.3)),
        ofInks('four-channel', four(1, 1, 1, 0.6, 0.3)),
        ofInks('black-only', black(1, 1, 1, 0.6, 0.3), [target('silver-halide')]),
      ]) {
        assert.ok(Math.abs(solid.forecasts[0].range.blockedShare - 0.6) < 1e-9);
        assert.deepEqual(judged([solid], 'blocked-shadows').named, []);
      }
    });
    it('the same dark picture on a process with a deep black', () => {
      const on = [target('offset-coated', { route: 'separated' })];
      const tones = [12, 14, 16, 18, 20, 40, 50];
      assert.deepEqual(judged([picture('rgb-neutral', { targets: on, tones })], 'blocked-shadows').named, []);
    });
    it('a page of practically one dark tone, which has no shading', () => {
      for (const tones of [Array(10).fill(1), [1, 1, 2, 2, 3, 3, 4, 4]])
        assert.deepEqual(found(tones).named, []);
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
    it('with the share that is the file’s own black told apart', () => {
      const [[finding]] = found([0, 0, ...dark]).pictures;
      assert.match(finding.message, /Another 17 % that prints so is the file's own black\./);
    });
    it('shades of black ink beside the solid, and shades of four inks', () => {
      for (const inks of [
        ofInks('black-only', black(1, 0.985, 0.98, 0.975, 0.6, 0.5, 0.4, 0.3)),
        ofInks('four-channel', four(1, 0.96, 0.955, 0.95, 0.6, 0.5, 0.4, 0.3)),
      ]) {
        const [[finding]] = judged([inks], 'blocked-shadows').pictures;
        assert.match(finding.message, /^About 38 % of this picture loses its shading/);
        assert.match(finding.message, /Another 13 % that prints so is the file's own black\./);
      }
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

import assert from 'node:assert/strict';
import { type Difference, differencesOf, figuresAlone } from '../../../src/report/compare/differences';
import type { PictureReport } from '../../../src/shared/finding';
import type { PictureFacts } from '../../../src/shared/picture';
import { brokenFacts } from '../../book/support/facts';
import { picture } from '../text/support';
import { page } from './support';

const other = (
  facts: Partial<PictureFacts>,
  bytes: Parameters<typeof differencesOf>[1] = null,
  samePixels: boolean | null = null,
) =>
  differencesOf(
    {
      samePixels,
      before: picture('a', [], { sha256: '1', width: 1440, height: 960, format: 'jpeg' }),
      after: picture('a', [], { sha256: '2', width: 1440, height: 960, format: 'jpeg', ...facts }),
    },
    bytes,
  );
const words = (all: Difference[]) => all.map(each => each.words);
const profile = (description: string) => ({
  ...{ description, space: 'rgb' as const, class: 'display', greyAxisChroma: 0 },
});

describe('what is otherwise in a picture', () => {
  it('is its size in pixels, and whether it has the shape that it had', () => {
    assert.deepEqual(other({ width: 720, height: 480 }), [
      { of: 'size', words: '1440 × 960, now 720 × 480 pixels, the same shape' },
    ]);
    assert.deepEqual(words(other({ width: 1000 })), [
      '1440 × 960, now 1000 × 960 pixels, another shape: cut, or another picture',
    ]);
    assert.deepEqual(words(other({ width: 960, height: 1440 })), [
      '1440 × 960, now 960 × 1440 pixels, turned by a quarter, or another picture',
    ]);
  });

  it('is how it is stored, each value before and now; and that nothing that is seen is otherwise goes first', () => {
    const [first, ...stored] = words(
      other({
        ...{ format: 'tiff', bits: 16, alpha: true, profile: profile('sRGB'), ppi: { x: 300, y: 300 } },
      }),
    );
    assert.match(first, /^by its figures the same picture: look at it$/);
    assert.deepEqual(stored, [
      'JPEG, now TIFF',
      '3 channels of 8 bits, now 3 channels of 16 bits with transparency',
      'profile none, now sRGB',
      'no resolution tag, now 300 pixels per inch by its tag',
    ]);
    const turned = other({ orientation: 6, channels: 1 });
    assert.deepEqual(words(turned), [
      'by its tag shown as it is stored, now turned by a quarter to the right',
      '3 channels of 8 bits, now 1 channel of 8 bits',
    ]);
  });

  it('is never said to be nothing beyond what the figures know', () => {
    const same = other({});
    assert.deepEqual(
      same.map(({ of }) => of),
      ['nothing'],
    );
    assert.match(same[0].words, /^by its figures the same picture: look at it$/);
    const levels = [0, 1, 2].map(() => ({ min: 128, max: 129, mean: 128.1 }));
    assert.match(
      words(other({ levels }))[0],
      /^by its figures nearly the same, or another picture: look at it$/,
    );
  });

  it('says once what figures do not tell, where pictures are the same by them alone', () => {
    const [before, after] = ['1', '2'].map(sha256 => picture('a', [], { sha256 }));
    const of = (...changes: [PictureReport, PictureReport, boolean | null][]) =>
      figuresAlone(
        changes.map(([was, is, samePixels]) => ({ pages: [page(was, is, { samePixels })], bytes: null })),
      );
    assert.match(of([before, after, null]), /^Figures do not tell where in a picture its tones lie/);
    assert.match(of([before, after, false]), /may be turned, mirrored or cut, or another picture\.$/);
    assert.equal(of([before, after, true], [before, before, null]), '');
    assert.equal(of([before, picture('a', [], { sha256: '3', width: 9 }), null]), '', 'it is seen');
  });

  it('is a file so much smaller of as many pixels that it was probably compressed more', () => {
    assert.deepEqual(words(other({}, { before: 263_046, after: 35_057 })).slice(1), [
      'file of 263 kB, now 35 kB of as many pixels, so probably compressed more: look at fine detail',
    ]);
    assert.deepEqual(
      words(other({ width: 720, height: 480 }, { before: 1_250_000, after: 35_057 })).slice(1),
      ['file of 1.3 MB, now 35 kB'],
    );
    assert.deepEqual(
      words(other({}, { before: 262_000, after: 200_000 })).slice(1),
      ['file of 262 kB, now 200 kB'],
      'an edit can do that',
    );
    assert.deepEqual(words(other({}, { before: 1000, after: 1050 })).length, 1, 'as large as before');
  });

  it('is ink, where there is any', () => {
    const inked = (maxTotal: number) =>
      picture('a', [], { sha256: `${maxTotal}`, ink: { maxTotal, meanTotal: 9 } });
    assert.deepEqual(differencesOf({ before: inked(320), after: inked(279.6), samePixels: null }, null), [
      { of: 'ink', words: 'ink up to 320 %, now 280 %' },
    ]);
  });

  it('is nothing that is seen where it is pixel for pixel the same, and something where its figures alone are', () => {
    const tagged = { profile: profile('A grey profile') };
    const [same, ...how] = other(tagged, null, true);
    assert.equal(same.of, 'nothing');
    assert.match(same.words, /^pixel for pixel the same picture: only how it is stored/);
    assert.deepEqual(words(how), ['profile none, now A grey profile']);
    const [alike] = other(tagged, null, false);
    assert.match(alike.words, /^by its figures the same picture, and not pixel for pixel: look at it$/);
    const [open] = other(tagged, null, null);
    assert.match(open.words, /^by its figures the same picture: look at it$/);
  });

  it('is nothing to tell of one content, of what is on one side alone and of what cannot be read', () => {
    const a = picture('a');
    assert.deepEqual(differencesOf({ before: a, after: a, samePixels: null }, null), []);
    assert.deepEqual(differencesOf({ before: null, after: a, samePixels: null }, null), []);
    const broken = { ...a, facts: brokenFacts('corrupt') };
    assert.deepEqual(differencesOf({ before: a, after: broken, samePixels: null }, null), []);
  });
});

import assert from 'node:assert/strict';
import { bufferSource } from '../../../src/picture/header/source';
import { MOST_PAGES, readTiff } from '../../../src/picture/header/tiff';
import { UnreadableError } from '../../../src/picture/header/unreadable';
import type { Header } from '../../../src/picture/types';
import { greyPage, LONG, RATIONAL, SHORT, type Tag, tiffBytes, UNDEFINED } from '../bytes';
import { RECORD, REMEDIED } from './remedied';

const pages = (...all: Tag[][]) => readTiff(bufferSource(tiffBytes(all)));
const page = (...more: Tag[]) => pages(greyPage(more))[0] as Header;
const depths = (n: number, bits = 8): Tag[] => [
  [258, SHORT, new Array<number>(n).fill(bits)],
  [277, SHORT, [n]],
];
const text = (s: string) => [...Buffer.from(s)];

describe('readTiff', () => {
  it('reads what remedy made it; a packet that lies outside the file says nothing', () => {
    assert.deepEqual(page([700, 1, text(RECORD)]).remedied, REMEDIED);
    assert.equal(page().remedied, null);
    const file = tiffBytes([greyPage([[700, 1, text(RECORD)]])]);
    const [cut] = readTiff(bufferSource(file.subarray(0, file.length - 10)));
    assert.deepEqual([(cut as Header).remedied, (cut as Header).incomplete], [null, true]);
  });

  it('takes the defaults of the standard: one bit, one sample', () => {
    const [header] = pages([
      [256, LONG, [8]],
      [257, LONG, [8]],
      [262, SHORT, [0]],
    ]) as Header[];
    assert.deepEqual([header.bits, header.channels, header.inverted], [1, 1, true]);
  });

  // ExtraSamples: TIFF 6.0 section 18
  const extras: [
    name: string,
    photometric: number,
    samples: number,
    extra: number[] | null,
    alpha: boolean,
    spots: number,
  ][] = [
    ['RGB with unassociated alpha', 2, 4, [2], true, 0],
    ['RGB with associated alpha', 2, 4, [1], true, 0],
    ['RGB with a saved selection', 2, 4, [0], false, 1],
    ['RGB with alpha and a selection', 2, 5, [2, 0], true, 1],
    ['RGB with a fourth sample that nobody explains', 2, 4, null, true, 0],
    ['grey with alpha', 1, 2, [2], true, 0],
    ['four inks', 5, 4, null, false, 0],
    ['four inks with alpha', 5, 5, [2], true, 0],
    ['four inks and two more', 5, 6, [0, 0], false, 2],
    ['four inks and one that nobody explains', 5, 5, null, false, 1],
  ];
  for (const [name, photometric, samples, extra, alpha, spots] of extras)
    it(`reads ${name}`, () => {
      const header = page(
        ...depths(samples),
        [262, SHORT, [photometric]],
        ...(extra ? [[338, SHORT, extra] as Tag] : []),
      );
      assert.deepEqual([header.alpha, header.spots], [alpha, spots]);
      assert.equal(
        header.remarks.some(r => r.code === 'spot-inks'),
        spots > 0,
      );
    });

  it('names the spot inks that the file names', () => {
    const names: Tag = [333, UNDEFINED, text('Cyan\0Magenta\0Yellow\0Black\0Orange\0')];
    const header = page(...depths(5), [262, SHORT, [5]], [332, SHORT, [2]], names, [338, SHORT, [0]]);
    assert.match(header.remarks[0].text, /One spot ink .*\(Orange\); not judged/);
  });

  it('says so where the inks of a set of others have no names', () => {
    const header = page(...depths(4), [262, SHORT, [5]], [332, SHORT, [2]]);
    assert.match(header.remarks[0].text, /does not name its inks/);
  });

  it('keeps page numbers where a preview stands between, and leaves the preview out', () => {
    const found = pages(greyPage(), greyPage([[254, LONG, [1]]]), greyPage([[254, LONG, [4]]]), greyPage());
    assert.deepEqual(
      found.map(h => [h.page, (h as Header).pages]),
      [
        [1, 4],
        [4, 4],
      ],
    );
  });

  it('reads the preview of a file that has nothing else, and says so', () => {
    const [header] = pages(greyPage([[254, LONG, [1]]])) as Header[];
    assert.deepEqual(
      header.remarks.map(r => r.code),
      ['embedded-preview'],
    );
  });

  it('takes no preview of a camera’s raw file for the picture, whatever it is called', () => {
    for (const [tag, type, value] of [
      [330, LONG, 8],
      [50706, LONG, 1],
    ] as const)
      assert.throws(
        () =>
          pages(
            greyPage([
              [254, LONG, [1]],
              [tag, type, [value]],
            ]),
          ),
        ({ reason, text }: UnreadableError) => reason === 'format' && /camera's raw file.*Develop/.test(text),
      );
    assert.equal(pages(greyPage([[330, LONG, [8]]])).length, 1, 'the picture itself stands first');
  });

  it('ends on a chain of pages that bites its tail', () => {
    const bytes = tiffBytes([greyPage(), greyPage()], { last: 8 });
    assert.equal(readTiff(bufferSource(bytes)).length, 2);
  });

  it('keeps the pages before a link into nowhere', () => {
    const bytes = tiffBytes([greyPage()], { last: 0x7fffffff });
    assert.equal(readTiff(bufferSource(bytes)).length, 1);
  });

  it('refuses more pages than a book has', () => {
    const many = Array.from({ length: MOST_PAGES + 1 }, (): Tag[] => [[256, LONG, [1]]]);
    assert.throws(() => pages(...many), { reason: 'too-large', message: /1000 pages/ });
  });

  it('gives a damaged page as an error beside the good ones', () => {
    const found = pages(greyPage(), greyPage([[258, SHORT, [12]]]), greyPage());
    assert.deepEqual(
      found.map(h => [h.page, h instanceof UnreadableError]),
      [
        [1, false],
        [2, true],
        [3, false],
      ],
    );
  });

  it('refuses what the decoder gets wrong, by name', () => {
    const refused: [RegExp, ...Tag[]][] = [
      [/12 bits/, [258, SHORT, [12]]],
      [/32 bits/, [258, SHORT, [32]]],
      [/signed/, [339, SHORT, [2]]],
      [/16-bit floating/, [258, SHORT, [16]], [339, SHORT, [3]]],
      [/64-bit floating/, [258, SHORT, [64]], [339, SHORT, [3]]],
      [/no tone/, [339, SHORT, [5]]],
      [/differ in depth/, [258, SHORT, [8, 8, 16]], [277, SHORT, [3]], [262, SHORT, [2]]],
      [/several channels of 4 bits/, ...depths(3, 4), [262, SHORT, [2]]],
      [/luma and chroma/, ...depths(3), [262, SHORT, [6]]],
      [/photometric 32803/, [262, SHORT, [32803]]],
      [/fewer channels/, [262, SHORT, [2]]],
      [/palette of more than 256/, [258, SHORT, [16]], [262, SHORT, [3]]],
    ];
    for (const [says, ...tags] of refused)
      assert.throws(() => page(...tags), { reason: 'format', message: says }, String(says));
  });

  it('reads resolution and orientation', () => {
    const header = page([274, SHORT, [8]], [282, RATIONAL, [3000, 10]], [283, RATIONAL, [300, 1]]);
    assert.deepEqual([header.orientation, header.ppi], [8, { x: 300, y: 300 }]);
  });

  it('reads the profile, and does without one that lies outside the file', () => {
    assert.equal(page([34675, UNDEFINED, text('profile')]).icc!.length, 7);
    const bytes = tiffBytes([greyPage([[34675, UNDEFINED, text('profile')]])]);
    const [header] = readTiff(bufferSource(bytes.subarray(0, bytes.length - 3))) as Header[];
    assert.equal(header.icc, null);
    assert.deepEqual(
      header.remarks.map(r => r.code),
      ['bad-profile'],
    );
  });

  it('knows when strips lie beyond the end and when no file of that size holds the page', () => {
    const strip = (length: number): Tag[] => [
      [273, LONG, [8]],
      [279, LONG, [length]],
    ];
    assert.equal(page(...strip(64)).incomplete, false);
    assert.equal(page(...strip(5000)).incomplete, true);
    const wide: Tag = [256, LONG, [1e6]];
    assert.equal(page(wide).impossible, true);
    assert.equal(page(wide, [259, SHORT, [5]]).impossible, true, 'LZW');
    assert.equal(page(wide, [257, LONG, [1]], [259, SHORT, [8]]).impossible, true, 'deflate');
    assert.equal(page([256, LONG, [10_000]], [257, LONG, [1]], [259, SHORT, [8]]).impossible, false);
  });
});

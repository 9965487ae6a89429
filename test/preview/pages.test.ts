import assert from 'node:assert/strict';
import fs from 'node:fs';
import { config } from '@vscode/l10n';
import { Parser } from 'htmlparser2';
import { asDrawn, bookPage, table } from '../../src/preview/book-page';
import { printedWords } from '../../src/preview/plate/printed';
import { readingWords } from '../../src/preview/plate/reading';
import { keyHelp, markTools, markWords, measuring, zoomTools } from '../../src/preview/plate/tools';
import { type Choice, outcome, remedySection } from '../../src/preview/remedy-page';
import { listPage, picturePage } from '../../src/preview/review-page';
import { changed, converted } from '../../src/preview/sides';
import { reviewedPicture, reviewOf } from '../../src/report/compare/review';
import { overviewOf } from '../../src/report/overview';
import { overlaysOf } from '../../src/report/page/overlays';
import { sheetOf } from '../../src/report/sheet';
import type { PictureReport } from '../../src/shared/finding';
import type { Marks } from '../../src/shared/look';
import type { BeforeAndAfter, ForecastChange, Remedies } from '../../src/shared/remedies';
import { change, comparison, findings, page } from '../report/compare/support';
import { finding, picture, report } from '../report/text/support';

/** Every string of the bundle in brackets, which nothing else has: what is outside of them was never looked up. */
const brackets = () => {
  const strings = Object.keys(JSON.parse(fs.readFileSync('l10n/bundle.l10n.json', 'utf8')));
  config({ contents: Object.fromEntries(strings.map(string => [string, `⟦${string}⟧`])) });
};

const READ = ['aria-label', 'title', 'alt', 'placeholder'];
/** Names of files, which are in no language. */
const NAMES = /[\w/]+\.(?:tif|png)/g;

/** Words outside of all brackets. */
const outside = (text: string): boolean => {
  let before = '';
  let rest = text;
  while (rest !== before) {
    before = rest;
    rest = rest.replace(/⟦[^⟦⟧]*⟧/g, '');
  }
  return /\p{L}{2}/u.test(rest.replace(NAMES, ''));
};

/** Where a page has words of its own that were not looked up, or words looked up where it says that it is English. */
function amiss(text: string): string[] {
  const found: string[] = [];
  const languages: string[] = [];
  /** Of one language, until another begins: a sentence may have parts of the page in it. */
  let said = '';
  const own = () => languages.findLast(lang => lang !== '') !== 'en';
  const parser = new Parser({
    onopentag(_, attributes) {
      languages.push(attributes.lang ?? '');
      for (const name of READ)
        if (own() && outside(attributes[name] ?? '')) found.push(`${name}: ${attributes[name]}`);
    },
    ontext(part) {
      if (own()) said += part;
      else if (/[⟦⟧]/.test(part)) found.push(`said to be English: ${part}`);
    },
    onclosetag: () => void languages.pop(),
  });
  parser.end(text);
  if (outside(said)) found.push(said);
  return found;
}

const stain = finding('residual-chroma', 'warning', 'A stain.');
const note = finding('light-shift', 'note', 'It may be seen.');
const pictures = [picture('a.tif', [stain]), picture('b.tif'), picture('b.tif', [], { page: 2 })];

const state = { root: null, filter: {}, drawn: '0', chosen: [], at: null, scroll: 0, whole: true } as const;
const bookOf = (all: PictureReport[], more: Parameters<typeof report>[1] = {}) =>
  overviewOf(report(all, more), [['a.tif', 'b.tif']]);

const figure = { label: 'A tint', before: 'in 3 of 10', after: 'in none' };
const forecast: ForecastChange = {
  process: 'Offset',
  paper: 'Coated',
  light: 'Daylight',
  basisWords: 'a guess',
  rows: [figure],
  more: [figure],
};

describe('pages in another language', () => {
  before(brackets);

  it('are found wanting where they say something in English, or say wrongly that they do', () => {
    assert.deepEqual(
      amiss('<p lang="en">one<b lang="x">⟦two⟧</b></p><p>⟦a <b lang="en">b</b> ⟦c⟧⟧ 7 a.tif</p>'),
      [],
    );
    for (const wrong of [
      '<p>words</p>',
      '<p>⟦a⟧ and</p>',
      '<p lang="en">⟦a⟧</p>',
      '<p title="a title">⟦a⟧</p>',
      '<p lang="en"><b lang="x">words</b></p>',
    ])
      assert.equal(amiss(wrong).length, 1, wrong);
  });

  it('show a whole book', () => {
    const remark = { intentStated: true, intent: 'line' } as const;
    for (const book of [
      bookOf(pictures, { findings: [note, note] }),
      bookOf([{ ...pictures[0], ...remark }, pictures[1]], { findings: [note] }),
      bookOf([]),
    ]) {
      assert.deepEqual(amiss(bookPage('⟦⟧', book, { ...state, filter: {}, chosen: [] }).text), []);
      assert.deepEqual(amiss(table(book.pictures).text), []);
    }
    for (const drawn of ['0', 'files'] as const) assert.deepEqual(amiss(asDrawn(drawn)), []);
  });

  it('show what changed', () => {
    const both = page(pictures[0], pictures[1], { findings: findings({ new: [note], ended: [stain] }) });
    const more = { neighbours: { before: 'a.tif', after: null, beside: ['a.tif'] } };
    const one = comparison(
      [change('changed', 'b.tif', [both], more), change('added', 'c.tif', [page(null, pictures[1])])],
      { notices: ['A notice.'], book: findings({ new: [note], ended: [note] }) },
    );
    const review = reviewOf(one);
    for (const since of ['commit', 'branch'] as const)
      assert.deepEqual(amiss(listPage(review, since, '').text), []);
    for (const [path, view] of [
      ['b.tif', 'wipe'],
      ['c.tif', 'sides'],
    ] as const) {
      const shown = reviewedPicture(one, path, null)!;
      assert.deepEqual(amiss(picturePage({ ...shown, pages: [1, 2] }, review, { view, zoom: 1 }).text), []);
    }
  });

  it('show what a conversion would make of a picture', () => {
    const remedies: Remedies = {
      encodings: [
        { id: 'rgb-neutral', name: 'Equal red, green and blue', does: 'It does.' },
        { id: 'single-channel', name: 'One channel', does: 'It does.' },
      ],
      methods: [{ id: 'lightness', name: 'Lightness', does: 'It does.' }],
      recommended: { to: 'rgb-neutral', why: 'the others are so' },
    };
    const choice: Choice = { to: 'rgb-neutral', method: 'lightness', view: 'wipe', zoom: 2 };
    assert.deepEqual(amiss(remedySection(remedies, choice, true).text), []);
    const result = {
      from: { id: 'colour', name: 'Colour' },
      found: { id: 'rgb-neutral', name: 'Equal red, green and blue' },
      proof: 'It is near.',
      told: ['Something was lost.'],
    };
    for (const changes of [[], [forecast]])
      assert.deepEqual(amiss(outcome({ ...result, changes } as unknown as BeforeAndAfter).text), []);
  });

  it('show a picture closely', () => {
    const sheet = sheetOf(picture('a.tif'), [], { light: null, series: 0 });
    const of = { ...sheet, conditions: [sheet.conditions[0], sheet.conditions[0]] };
    const overlays = overlaysOf(of, 0);
    const marks = { shares: { colour: 0.1, lights: 0, ink: null } } as unknown as Marks;
    for (const { text } of [
      zoomTools(),
      markTools(overlays, ['shadows'], of, 0),
      markWords(overlays, marks),
      measuring(),
      keyHelp(),
    ])
      assert.deepEqual(amiss(text), []);
  });

  it('say how large it is printed, and what stands in a pixel', () => {
    const size = { width: 300, height: 200 };
    for (const from of ['placed', 'ppi', 'assumed'] as const)
      for (const ppi of [null, 110])
        assert.deepEqual(amiss(printedWords(size, { perMm: 20, from }, ppi)), []);
    const channels = [{ name: 'Grey', value: 7 }];
    for (const full of [null, 255])
      for (const alpha of [null, 0.5])
        for (const lab of [null, { L: 50, a: 0, b: 0, chroma: 0 }])
          assert.deepEqual(amiss(readingWords({ x: 1, y: 2, channels, full, alpha, lab })), []);
  });

  it('say which of two pictures is which', () => {
    for (const { before, after, bar, at } of [changed(), converted()])
      for (const words of [before, after, bar, at(50)]) assert.deepEqual(amiss(words), []);
  });
});

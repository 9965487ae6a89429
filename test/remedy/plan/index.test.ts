import assert from 'node:assert/strict';
import { plan } from '../../../src/remedy/plan';
import type { Lines } from '../../../src/remedy/plan/placing';
import { copiesAmong } from '../../../src/remedy/plan/skips';
import type { Asked, Decision, Place } from '../../../src/remedy/plan/types';
import { wishKey } from '../../../src/remedy/plan/wish-key';
import type { PictureFacts } from '../../../src/shared/picture';
import type { RemedyEncoding, RemedyWish } from '../../../src/shared/remedy';
import { brokenFacts, greyFacts } from '../../book/support/facts';
import { askedFor, wishFor } from '../support';

const beside: Place = { kind: 'beside' };
const inPlace: Place = { kind: 'in-place' };
const apart: Place = { kind: 'folder', folder: '/elsewhere/out', shown: '../out' };

const noLines: Lines = { of: () => [], at: () => [] };

const one = (
  asked: Asked,
  wish: Partial<RemedyWish> = {},
  place: Place = beside,
  lines = noLines,
): Decision => plan([asked], wishFor(wish), place, lines)[0];
const reasonOf = (decision: Decision) => ('reason' in decision ? decision.reason : '');
const outputs = (decisions: Decision[]) =>
  decisions.map(decision => ('order' in decision ? decision.order.shown : decision.do));

describe('plan of a conversion', () => {
  it('puts results beside the pictures, into a folder by the book’s folders, or in their place', () => {
    const asked = askedFor('plates/01.tif');
    const order = (place: Place) => {
      const decision = one(asked, {}, place);
      assert.ok(decision.do === 'convert');
      return [decision.order.output, decision.order.shown];
    };
    assert.deepEqual(order(beside), ['/book/plates/01.rgb-neutral.tif', 'plates/01.rgb-neutral.tif']);
    assert.deepEqual(order(apart), ['/elsewhere/out/plates/01.tif', '../out/plates/01.tif']);
    assert.deepEqual(order(inPlace), ['/book/plates/01.tif', 'plates/01.tif']);
  });

  it('says the format and the depth', () => {
    const stored = (path: string, wish: Partial<RemedyWish>, facts = {}) => {
      const decision = one(askedFor(path, {}, facts), wish);
      assert.ok(decision.do === 'convert');
      return [decision.order.format, decision.order.bits];
    };
    assert.deepEqual(stored('a.jpg', {}), ['tiff', 8]);
    assert.deepEqual(stored('a.jpg', { quality: 90 }), ['jpeg', 8]);
    assert.deepEqual(stored('a.jpg', { bits: 16 }), ['tiff', 16]);
    assert.deepEqual(stored('a.png', { to: 'black-only' }), ['tiff', 8]);
    assert.deepEqual(stored('a.tif', {}, { bits: 16 }), ['tiff', 16]);
    assert.deepEqual(stored('a.tif', {}, { bits: 1 }), ['tiff', 8]);
    assert.deepEqual(stored('a.tif', { format: 'jpeg' }, { bits: 16 }), ['jpeg', 8]);
    assert.deepEqual(stored('a.webp', {}, { format: 'webp' }), ['tiff', 8]);
  });

  it('keeps a JPEG one where its luminance surely stays as it is coded, and where it is replaced', () => {
    const planned = (asked: Asked, wish: Partial<RemedyWish>, place: Place = beside) => {
      const decision = one(asked, wish, place);
      assert.ok(decision.do === 'convert');
      const { shown, format, change } = decision.order;
      return [shown, format, change !== null];
    };
    const to = 'single-channel';
    const neutral = askedFor('a.jpg', { luminance: true }, { encoding: 'rgb-neutral' });
    assert.deepEqual(planned(neutral, { to }), ['a.single-channel.jpg', 'jpeg', false]);
    assert.deepEqual(planned(neutral, { to: 'black-only' }), ['a.jpg.black-only.tif', 'tiff', true]);
    const residual = askedFor('a.jpg', { luminance: true }, { encoding: 'rgb-residual' });
    assert.deepEqual(planned(residual, { to }), ['a.jpg.single-channel.tif', 'tiff', true]);
    for (const asked of [neutral, residual, askedFor('a.jpg')])
      assert.deepEqual(planned(asked, { to }, inPlace), ['a.jpg', 'jpeg', false]);
  });

  it('makes a PNG of what would be a TIFF, where a line of a layout is to place it that can place none', () => {
    const line = { file: 'page.html', line: 3 };
    const lines: Lines = { of: ({ path }) => (path === 'unplaced.jpg' ? [] : [line]), at: () => [] };
    const order = (asked: Asked, wish: Partial<RemedyWish> = {}, place: Place = beside) => {
      const decision = one(asked, wish, place, lines);
      assert.ok(decision.do === 'convert');
      const { shown, format, bits, wish: asks, change, told } = decision.order;
      return { shown, format, bits, asks: asks.format, change: change !== null, told };
    };
    assert.deepEqual(order(askedFor('a.jpg')), {
      ...{ shown: 'a.jpg.rgb-neutral.png', format: 'png', bits: 8, asks: 'png', change: false },
      told: [
        'A JPEG rounds these tones anew, by up to about L* 1 even at quality 100. The result is a PNG and no TIFF, since browsers show no TIFF, and page.html:3 is to place it.',
      ],
    });
    assert.equal(order(askedFor('a.jpg'), {}, apart).shown, '../out/a.jpg.png');
    const deep = order(askedFor('a.jpg'), { bits: 16, to: 'single-channel' });
    assert.deepEqual([deep.format, deep.bits], ['png', 16]);
    assert.match(order(askedFor('a.webp', {}, { format: 'webp' })).told[0], /No WEBP is written.*is a PNG/);
    const tiff = order(askedFor('a.tif', {}, { format: 'tiff' }));
    assert.deepEqual(
      [tiff.shown, tiff.told],
      [
        'a.tif.rgb-neutral.png',
        ['The result is a PNG and no TIFF, since browsers show no TIFF, and page.html:3 is to place it.'],
      ],
    );
    const kept: [Asked, Partial<RemedyWish>, Place, string][] = [
      [askedFor('unplaced.jpg'), {}, beside, 'tiff'],
      [askedFor('a.jpg'), { to: 'black-only' }, beside, 'tiff'],
      [askedFor('a.jpg'), { format: 'tiff' }, beside, 'tiff'],
      [askedFor('a.jpg'), { quality: 90 }, beside, 'jpeg'],
      [askedFor('a.tif'), { format: 'tiff' }, beside, 'tiff'],
      [askedFor('a.tif'), { to: 'black-only' }, beside, 'tiff'],
      [askedFor('a.tif', {}, { format: 'tiff' }), {}, inPlace, 'tiff'],
      [askedFor('a.jpg'), {}, inPlace, 'jpeg'],
    ];
    for (const [asked, wish, place, format] of kept)
      assert.deepEqual([order(asked, wish, place).format, order(asked, wish, place).told], [format, []]);
  });

  it('makes one of a TIFF that is right already, where the line surely cannot place it or the picture is named', () => {
    const right = { format: 'tiff', encoding: 'rgb-neutral' } as const;
    const done = (
      file: string,
      changes: Partial<Asked> = {},
      wish: Partial<RemedyWish> = {},
      place: Place = beside,
    ) => {
      const lines: Lines = { of: () => [{ file, line: 3 }], at: () => [] };
      const decision = one(askedFor('a.tif', changes, right), wish, place, lines);
      return decision.do === 'convert' ? decision.order.format : decision.do;
    };
    assert.deepEqual(
      [done('page.html'), done('book.typ'), done('book.tex'), done('book.tex', { named: true })],
      ['png', 'png', 'skip', 'png'],
    );
    assert.equal(done('page.html', {}, { format: 'tiff' }), 'skip');
    assert.equal(done('page.html', {}, {}, inPlace), 'skip');
    assert.equal(done('page.html', { intent: 'colour', intentStated: true }), 'skip');
  });

  it('makes one of any other file that is right already, by the same lines', () => {
    const done = (path: string, file: string, named: boolean, format: 'webp' | 'avif' | 'png') => {
      const lines: Lines = { of: () => [{ file, line: 3 }], at: () => [] };
      const decision = one(askedFor(path, { named }, { format, encoding: 'rgb-neutral' }), {}, beside, lines);
      return decision.do === 'convert' ? decision.order.format : decision.do;
    };
    assert.equal(done('a.webp', 'book.tex', true, 'webp'), 'png');
    assert.equal(done('a.webp', 'book.tex', false, 'webp'), 'skip');
    assert.equal(done('a.avif', 'book.typ', false, 'avif'), 'png');
    assert.equal(done('a.webp', 'book.typ', true, 'webp'), 'skip', 'Typst takes it');
    assert.equal(done('a.tif', 'page.html', true, 'png'), 'skip', 'its name alone is wrong');
  });

  it('goes on making a PNG where a layout places that result already', () => {
    const placed = (path: string): Lines => ({
      of: () => [],
      at: output => (output === path ? [{ file: 'book.md', line: 7 }] : []),
    });
    const made = (lines: Lines) => {
      const decision = one(askedFor('a.jpg'), {}, beside, lines);
      assert.ok(decision.do === 'convert');
      return [decision.order.shown, /book\.md:7 places it so/.test(decision.order.told.join())];
    };
    assert.deepEqual(made(placed('/book/a.jpg.rgb-neutral.png')), ['a.jpg.rgb-neutral.png', true]);
    assert.deepEqual(made(placed('/book/a.jpg.rgb-neutral.tif')), ['a.jpg.rgb-neutral.tif', false]);
  });

  it('gives a picture the same name whatever else is named along with it', () => {
    const all = ['a.jpg', 'a.png', 'a.tif', 'b/a.jpg'].map(path => askedFor(path));
    const together = outputs(plan(all, wishFor({ format: 'png' }), beside, noLines));
    assert.deepEqual(together, [
      'a.jpg.rgb-neutral.png',
      'a.rgb-neutral.png',
      'a.tif.rgb-neutral.png',
      'b/a.jpg.rgb-neutral.png',
    ]);
    assert.deepEqual(
      all.flatMap(asked => outputs([one(asked, { format: 'png' })])),
      together,
    );
  });

  it('lets no two pictures have one result, on any file system', () => {
    const decisions = plan([askedFor('A.jpg'), askedFor('a.jpg')], wishFor(), beside, noLines);
    assert.deepEqual(outputs(decisions), ['A.jpg.rgb-neutral.tif', 'refuse']);
    assert.match(reasonOf(decisions[1]), /same name as that of "A.jpg"/);
    assert.deepEqual(outputs(plan([askedFor('A.jpg'), askedFor('a.jpg')], wishFor(), inPlace, noLines)), [
      'A.jpg',
      'a.jpg',
    ]);
  });

  it('skips what is right already, but not what is to be changed otherwise', () => {
    const right = (to: RemedyEncoding) => askedFor('a.tif', {}, { encoding: to });
    assert.equal(one(right('rgb-neutral')).do, 'skip');
    assert.equal(one(right('black-only'), { to: 'black-only' }).do, 'skip');
    const curve = Array.from({ length: 101 }, (_, L) => L);
    for (const wish of [{ curve }, { bits: 16 }, { format: 'png' }] as Partial<RemedyWish>[])
      assert.equal(one(right('rgb-neutral'), wish).do, 'convert', JSON.stringify(Object.keys(wish)));
    assert.equal(one(right('rgb-toned'), { to: 'rgb-toned' }).do, 'skip');
    assert.equal(one(right('rgb-toned'), { to: 'rgb-toned', tone: { kind: 'even' } }).do, 'convert');
    const toneless = one(right('single-channel'), { to: 'rgb-toned', tone: { kind: 'even' } });
    assert.ok(toneless.do === 'skip' && /no tone of its own.*--tone/.test(toneless.reason));
    const stated = { to: 'rgb-toned', tone: { kind: 'stated', a: 1, b: 4 } } as const;
    assert.equal(one(right('single-channel'), stated).do, 'convert');
    const profile = { description: 'sRGB', class: 'display', greyAxisChroma: 0 };
    for (const [space, done] of [
      ['rgb', 'convert'],
      ['grey', 'skip'],
    ] as const) {
      const facts = { encoding: 'single-channel', space: 'grey', profile: { ...profile, space } } as const;
      assert.equal(one(askedFor('a.tif', {}, facts), { to: 'single-channel' }).do, done);
    }
    const lying = askedFor('a.tif', {}, { encoding: 'rgb-neutral', orientation: 6 });
    assert.deepEqual([one(lying).do, one(lying, { upright: true }).do], ['skip', 'convert']);
  });

  it('fits no tones that were fitted before, as the picture itself records, named or not', () => {
    const curve = Array.from({ length: 101 }, (_, L) => L);
    const record = { from: 'a'.repeat(64), to: 'rgb-neutral' as const, toned: false };
    for (const named of [false, true]) {
      const fitted = askedFor('a.jpg', { named, remedied: { ...record, fitted: true } });
      const decision = one(fitted, { curve });
      assert.deepEqual([decision.do, /were fitted before/.test(reasonOf(decision))], ['skip', true]);
      assert.equal(one(fitted).do, 'convert');
      const plain = askedFor('a.jpg', { named, remedied: { ...record, fitted: false } });
      assert.equal(one(plain, { curve }).do, 'convert');
    }
  });

  it('leaves pictures in colour that are meant so, unless they are meant themselves', () => {
    const meant = { intent: 'colour' as const };
    assert.match(reasonOf(one(askedFor('a.jpg', { ...meant, named: true }))), /meant to be in colour/);
    assert.equal(one(askedFor('a.jpg', { ...meant, meant: true })).do, 'convert');
    assert.equal(one(askedFor('a.jpg', { intent: 'toned' }, { encoding: 'rgb-toned' })).do, 'skip');
    const residual = askedFor('a.jpg', { intent: 'toned' }, { encoding: 'rgb-residual' });
    assert.equal(one(residual, { to: 'rgb-toned' }).do, 'convert');
  });

  it('gives a picture that is right a profile in a folder of results, where nothing else of it changes', () => {
    const to = 'single-channel' as const;
    const facts = { encoding: to, space: 'grey' as const, profile: null, assumed: 'No profile.' };
    const done = (
      name: string,
      change: Partial<PictureFacts> = {},
      wish: Partial<RemedyWish> = {},
      luminance = true,
      place: Place = apart,
    ) => one(askedFor(name, { luminance }, { ...facts, ...change }), { to, ...wish }, place).do;
    assert.deepEqual(
      ['a.jpg', 'a.png', 'a.tif'].map(name => done(name)),
      new Array(3).fill('convert'),
    );
    const profile = { description: 'Grey', class: 'display', space: 'grey' as const, greyAxisChroma: 0 };
    assert.equal(done('a.jpg', { profile }), 'copy');
    assert.equal(done('a.jpg', {}, {}, false), 'copy', 'its tones would be rounded');
    assert.equal(done('a.jpg', {}, { quality: 90 }), 'copy');
    assert.equal(done('a.webp', { format: 'webp' }), 'copy');
    assert.equal(done('a.tif', { bits: 32 }), 'copy');
    assert.equal(done('a.png', { palette: true }), 'copy');
    assert.equal(done('a.tif', { encoding: 'rgb-toned', space: 'rgb' }, { to: 'rgb-toned' }), 'copy');
    assert.equal(done('a.jpg', {}, {}, true, beside), 'skip');
  });

  it('gives a copy a name that says what it is, and says so', () => {
    const facts = { encoding: 'rgb-neutral' as const, format: 'jpeg' as const };
    const copied = (name: string) => {
      const decision = one(askedFor(name, {}, facts), {}, apart);
      assert.ok(decision.do === 'copy');
      return [decision.order.shown, decision.order.told.join()];
    };
    assert.deepEqual(copied('x/a.jpeg'), ['../out/x/a.jpeg', '']);
    const [name, told] = copied('x/a.tif');
    assert.equal(name, '../out/x/a.tif.jpg');
    assert.match(told, /a JPEG by its content/);
  });

  it('leaves a strong tone that nobody said may go, and says how it is taken all the same', () => {
    const toned = (mean: number, change: Partial<Asked> = {}) =>
      askedFor(
        'a.jpg',
        { intentStated: false, ...change },
        { encoding: 'rgb-toned', chroma: { ...greyFacts('').chroma!, mean } },
      );
    assert.match(reasonOf(one(toned(16))), /strong tone, which may be meant.*"--all".*"intent"/);
    assert.equal(one(toned(4)).do, 'convert');
    assert.equal(one(toned(16, { meant: true })).do, 'convert');
    assert.equal(one(toned(16, { intentStated: true })).do, 'convert', 'the settings say grey');
    assert.equal(one(toned(16), { below: 10 }).do, 'convert', 'what is as strong stays');
    assert.equal(one(toned(16), { below: 20 }).do, 'skip');
    assert.equal(one(toned(16), { to: 'rgb-toned', tone: { kind: 'even' } }).do, 'convert');
    const stated = toned(4, { intent: 'toned', intentStated: true });
    assert.match(reasonOf(one(stated)), /settings say that it is meant to be toned/);
    assert.equal(one(stated, { below: 2 }).do, 'skip');
  });

  it('leaves one bit as it is unless it is meant itself or the settings say grey, and has it lie among the results', () => {
    const bit = { encoding: 'bilevel' as const, bits: 1 };
    const line = { intent: 'line' as const, intentStated: true };
    const unstated = { intentStated: false };
    assert.match(reasonOf(one(askedFor('a.tif', line, bit))), /line art, and it is stored in one bit/);
    assert.match(reasonOf(one(askedFor('a.tif', unstated, bit))), /stored in one bit.*nobody said.*"--all"/);
    assert.equal(one(askedFor('a.tif', { ...line, meant: true }, bit)).do, 'convert');
    assert.equal(one(askedFor('a.tif', { ...unstated, meant: true }, bit)).do, 'convert');
    assert.equal(one(askedFor('a.tif', {}, bit)).do, 'convert');
    const copy = one(askedFor('a.tif', unstated, bit), {}, apart);
    assert.ok(copy.do === 'copy');
    assert.match(copy.order.told[0], /one bit/);
    assert.equal(one(askedFor('a.tif', unstated, bit), { to: 'rgb-toned' }, apart).do, 'copy');
    assert.equal(
      one(askedFor('a.tif', line, { encoding: 'rgb-neutral' }), { to: 'single-channel' }).do,
      'convert',
    );
  });

  it('refuses what cannot be read, in the reader’s words, and what holds several pages', () => {
    const broken = one(askedFor('a.jpg', { pages: [brokenFacts('truncated')] }));
    assert.deepEqual([broken.do, reasonOf(broken)], ['refuse', 'It is truncated.']);
    const pages = [greyFacts('1'), greyFacts('1', { page: 2 })];
    assert.match(reasonOf(one(askedFor('a.tif', { pages }))), /It holds 2 pages/);
  });

  it('refuses in place what needs another name or is write-protected, and nothing of it beside', () => {
    const cases: [Asked, Partial<RemedyWish>, RegExp][] = [
      [askedFor('a.png'), { to: 'black-only' }, /cannot hold inks.*cannot be converted in place/],
      [askedFor('a.webp', {}, { format: 'webp' }), {}, /No WEBP is written here.*in place/],
      [askedFor('a.jpg'), { bits: 16 }, /16 bits.*in place/],
      [askedFor('a.jpg'), { format: 'png' }, /wants another name.*in place/],
      [askedFor('a.jpg', { isProtected: true }), {}, /write-protected/],
    ];
    for (const [asked, wish, reason] of cases) {
      const decision = one(asked, wish, inPlace);
      assert.deepEqual([decision.do, reason.test(reasonOf(decision))], ['refuse', true], reasonOf(decision));
      assert.equal(one(asked, wish, beside).do, 'convert');
    }
  });

  it('never converts the result of a conversion in place once more in place', () => {
    const done = askedFor('a.jpg', { replacedBy: wishKey(wishFor()) });
    assert.deepEqual(
      [one(done, {}, inPlace).do, reasonOf(one(done, {}, inPlace))],
      ['skip', 'It was converted so before.'],
    );
    const other = one(done, { to: 'black-only' }, inPlace);
    assert.equal(other.do, 'refuse');
    assert.match(reasonOf(other), /Undo the earlier one first/);
    assert.equal(one(done, { to: 'black-only' }, beside).do, 'convert');
  });

  it('tells by which link a picture was named, and that a second name of it stays as it was', () => {
    const decision = one(askedFor('a.jpg', { link: 'b.jpg', otherNames: 1 }), {}, inPlace);
    assert.ok(decision.do === 'convert');
    assert.equal(decision.order.told.length, 2);
    assert.match(decision.order.told.join(), /"b.jpg" is a link to it.*hard links/);
    assert.match(decision.order.told.join(), /Undoing does not join them again/);
  });

  it('warns of a picture that is the result of a conversion by its own record, wherever that was made', () => {
    const remedied = { from: 'a'.repeat(64), to: 'single-channel', toned: false, fitted: false } as const;
    const told = (change: Partial<Asked>, place: Place) => {
      const decision = one(askedFor('a.jpg', change), {}, place);
      assert.ok(decision.do === 'convert');
      return decision.order.told.join(' ');
    };
    for (const place of [beside, inPlace, apart])
      assert.match(
        told({ remedied }, place),
        /converted before.*Its original is not kept here: convert that/,
      );
    assert.match(told({ remedied, replacedBy: 'x' }, beside), /Its original is kept: bring it back first/);
    assert.equal(told({}, inPlace), '');
  });
});

describe('copies among the pictures of a folder', () => {
  const original = askedFor('a.jpg');
  const record = (from: string) => ({ from, to: 'rgb-neutral' as const, toned: false, fitted: false });
  const copies = (...others: Asked[]) =>
    [...copiesAmong([original, ...others], new Map([['out/c.jpg', 'a.jpg']]))].map(({ path }) => path);

  it('are known by the hash of what they were made from, wherever they lie', () =>
    assert.deepEqual(copies(askedFor('x/a.jpg', { remedied: record(original.pages[0].sha256) })), [
      'x/a.jpg',
    ]));

  it('are known by their name where the original was changed since', () => {
    const stale = record('d'.repeat(64));
    assert.deepEqual(copies(askedFor('a.rgb-neutral.jpg', { remedied: stale })), ['a.rgb-neutral.jpg']);
    assert.deepEqual(copies(askedFor('a.jpg.black-only.tif', { remedied: stale })), ['a.jpg.black-only.tif']);
  });

  it('are known as what lines were made to place, though they say nothing themselves', () =>
    assert.deepEqual(copies(askedFor('out/c.jpg'), askedFor('out/d.jpg')), ['out/c.jpg']));

  it('are none without a record, without an original, in its place, or named themselves', () => {
    const stale = record('d'.repeat(64));
    assert.deepEqual(copies(askedFor('a.rgb-neutral.jpg')), []);
    assert.deepEqual(copies(askedFor('b.rgb-neutral.jpg', { remedied: stale })), []);
    const mine = record(original.pages[0].sha256);
    assert.deepEqual(copies(askedFor('b.jpg', { remedied: mine, replacedBy: 'x' })), []);
    assert.deepEqual(copies(askedFor('b.jpg', { remedied: mine, named: true })), []);
  });
});

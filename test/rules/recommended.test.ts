import assert from 'node:assert/strict';
import { asTaken, type Recommendation, recommendations, saveAs } from '../../src/rules/recommended';
import type { BookPicture } from '../../src/shared/finding';
import type { Encoding } from '../../src/shared/picture';
import { picture, pictures, record, target } from './support/pictures';

const GAIN = 0.2;
const of = (book: BookPicture[], which = book[0]) =>
  recommendations(book, GAIN)(which, which.targets[0] ?? null);

const answer = (found: Recommendation | null) => found && { encoding: found.encoding, why: found.why };

/** Keeps inks; its four inks scatter much and its black alone does not (own guesses of the model). */
const inks = target('dry-toner', { route: 'inks' });

describe('the recommended encoding', () => {
  it('is what most pictures of a part have', () => {
    const book = [...pictures(3, 'single-channel'), picture('rgb-neutral')];
    assert.deepEqual(of(book), { encoding: 'single-channel', why: 'majority' });
  });
  it('is another where that clearly prints with less of a tint', () => {
    const targets = [target('dry-toner', { route: 'inks', encodings: ['rgb-neutral', 'black-only'] })];
    assert.equal(of(pictures(4, 'rgb-neutral', { targets }))?.encoding, 'black-only');
    assert.equal(
      recommendations(pictures(4, 'rgb-neutral', { targets }), Number.POSITIVE_INFINITY)(
        picture('rgb-neutral', { targets }),
        targets[0],
      )?.encoding,
      'rgb-neutral',
      'nothing speaks against the majority where nobody wants to hear of tints',
    );
  });
  it('is left to a check of the whole book where others were not looked at and there is a choice', () => {
    const saved = (targets: BookPicture['targets'], partial: boolean) => {
      const toned = picture('rgb-toned', { targets });
      return saveAs(toned, recommendations([toned], GAIN, partial));
    };
    const [open, one, two] = [
      target('offset-coated'),
      target('offset-coated', { name: 'one', encodings: ['rgb-neutral'] }),
      target('offset-coated', { name: 'two', encodings: ['rgb-neutral', 'single-channel'] }),
    ];
    assert.notEqual(saved([open], false), saved([open], true));
    for (const targets of [[open], [two], [open, two], []])
      assert.equal(saved(targets, true), 'what a check of the whole book recommends');
    assert.equal(saved([one], true), 'rgb-neutral', 'the only one that is taken, whatever the others are');
    assert.equal(
      saved([one, two], true),
      'rgb-neutral for target "one" and what a check of the whole book recommends for target "two"',
    );
  });
  describe('where prints of the house were read', () => {
    const photographic = target('silver-halide', { printRecord: record('silver-halide', 14) });
    const toner = target('liquid-toner', { printRecord: record('liquid-toner') });
    it('is not one that was not read, however much less often it is tinted by the process in general', () => {
      const book = [
        ...pictures(3, 'rgb-neutral', { targets: [toner] }),
        picture('single-channel', { targets: [toner] }),
      ];
      const [read, generic] = [book[0], book[3]].map(({ forecasts }) => forecasts[0]);
      assert.ok(read.tint.seen - generic.tint.seen > 0.5, 'else nothing would speak for the other');
      assert.deepEqual(of(book), { encoding: 'rgb-neutral', why: 'majority', open: true });
      const few = [book[0], book[3]];
      assert.deepEqual([of(few)?.encoding, of(few)?.why], ['rgb-neutral', 'read']);
    });
    it('is what most have, though that was not read', () => {
      const others = pictures(3, 'single-channel', { targets: [toner] });
      assert.equal(of([...others, picture('rgb-neutral', { targets: [toner] })])?.encoding, 'single-channel');
      const neutral = { ...record('dry-toner', null, 'black-only') };
      neutral.readings[0].greys = [{ L: 50, a: 0, b: 0 }];
      const inks = target('dry-toner', { route: 'inks', printRecord: neutral });
      const unread = pictures(4, 'rgb-neutral', { targets: [inks] });
      assert.ok(unread[0].forecasts[0].tint.seen > 0.4);
      assert.equal(of(unread)?.encoding, 'rgb-neutral', 'a generic figure says nothing beside a reading');
    });
    it('is not another that goes the same way through the machine, whatever is less sure of it', () => {
      const book = [
        ...pictures(2, 'rgb-neutral', { targets: [photographic] }),
        ...pictures(2, 'single-channel', { targets: [photographic] }),
      ];
      const { encoding, why, open } = of(book)!;
      assert.deepEqual([encoding, why, open], ['rgb-neutral', 'read', undefined]);
    });
    it('is a read one that prints clearly less often with a tint than the other that was read', () => {
      const both = record('dry-toner');
      both.readings.push({ ...both.readings[0], encoding: 'black-only', greys: [{ L: 50, a: 0, b: 0 }] });
      const inks = target('dry-toner', { route: 'inks', printRecord: both });
      assert.equal(of(pictures(4, 'rgb-neutral', { targets: [inks] }))?.encoding, 'black-only');
    });
  });
  it('is one that the target takes, and none where it takes no grey', () => {
    const only = (encodings: ('single-channel' | 'rgb-toned')[]) =>
      pictures(2, 'black-only', { targets: [target('offset-coated', { encodings })] });
    assert.equal(of(only(['single-channel']))?.encoding, 'single-channel');
    assert.equal(of(only(['rgb-toned'])), null);
  });
  it('of ways that print alike is the one that leaves least to convert, then R = G = B', () => {
    const lone = [picture('four-channel'), picture('black-only')];
    assert.equal(of(lone)?.encoding, 'rgb-neutral');
    assert.equal(of([...lone, picture('single-channel')])?.encoding, 'single-channel');
  });
  it('without a majority sends nobody a longer way, to a weaker black, for what would not move a majority', () => {
    const targets = [target('offset-coated')];
    const tones = [55, 60, 65, 70];
    const some = (count: number, encoding: Encoding) =>
      pictures(count, encoding, { targets, tones, ...(encoding === 'rgb-toned' && { tone: [4, 8] }) });
    const book = [...some(5, 'rgb-neutral'), ...some(4, 'rgb-toned'), ...some(1, 'black-only')];
    const [neutral] = book;
    const black = book.at(-1)!;
    const [chance, other] = [neutral, black].map(({ forecasts }) => forecasts[0].tint.seen);
    assert.ok(chance - other > 0.1 && chance - other < GAIN, 'evener, and not clearly so');
    assert.equal(of(book)?.encoding, 'rgb-neutral');
    assert.notEqual(recommendations(book, 0.1)(neutral, targets[0])?.encoding, 'rgb-neutral');
  });
  it('without a majority takes no great difference for a tie, whatever gain is asked for or where nobody wants to hear of tints', () => {
    const targets = [target('dry-toner', { route: 'inks', encodings: ['rgb-neutral', 'black-only'] })];
    const book = [picture('rgb-neutral', { targets }), picture('black-only', { targets })];
    const [chance, other] = book.map(({ forecasts }) => forecasts[0].tint.seen);
    assert.ok(chance - other > 0.25, 'no tie');
    const blacks = book.map(({ forecasts }) => forecasts[0].range.black);
    assert.ok(blacks[1] - blacks[0] > 1, 'else the black would say the same');
    for (const gain of [GAIN, 0.9, Number.POSITIVE_INFINITY])
      assert.deepEqual(answer(recommendations(book, gain)(book[0], targets[0])), {
        encoding: 'black-only',
        why: 'even',
      });
  });
  it('of nearly even ways is the one with the deepest black', () => {
    const targets = [target('offset-coated', { route: 'inks' })];
    const book = (['rgb-neutral', 'black-only', 'single-channel'] as const).map(e => picture(e, { targets }));
    const best = of(book)!;
    const blacks = book.map(({ forecasts }) => forecasts[0].range.black);
    // black ink alone is the flattest grey of a press (common practice, no source; TR 006: L* 16 against 10)
    assert.notEqual(best.encoding, 'black-only');
    assert.ok(blacks[1] > blacks[0]);
  });
  it('needs no forecast: without a target what most have, else what goes everywhere', () => {
    const bare = { targets: [] };
    assert.equal(of(pictures(2, 'black-only', bare))?.encoding, 'black-only');
    assert.deepEqual(of([picture('black-only', bare), picture('single-channel', bare)]), {
      encoding: 'single-channel',
      why: 'frequent',
    });
  });
  it('is named for each target where they differ', () => {
    const a = target('silver-halide', { name: 'a', encodings: ['rgb-neutral'] });
    const b = target('offset-coated', { name: 'b', encodings: ['single-channel'] });
    const book = [picture('four-channel', { targets: [a, b] })];
    assert.equal(
      saveAs(book[0], recommendations(book, GAIN)),
      'rgb-neutral for target "a" and single-channel for target "b"',
    );
  });
  it('hangs on the print house where nobody said that it is taken', () => {
    assert.equal(
      asTaken({ encoding: 'black-only', why: 'even' }, inks),
      'black-only, once the print house says that it takes it',
    );
    assert.equal(asTaken({ encoding: 'black-only', why: 'majority' }, inks), 'black-only');
  });
});

import assert from 'node:assert/strict';
import { judge } from '../../../src/rules';
import type { BookPicture } from '../../../src/shared/finding';
import { judged } from '../support/judged';
import { picture, pictures, record, target } from '../support/pictures';

const found = (...book: BookPicture[]) => judged(book, 'likely-tint');
/** A process whose four inks scatter much and whose black does not; the house keeps ink values. */
const inks = [target('dry-toner', { route: 'inks', encodings: ['rgb-neutral', 'black-only'] })];

describe('likely-tint', () => {
  describe('passes', () => {
    it('black ink alone, the steadiest grey there is', () => {
      const { named, book } = found(picture('black-only', { targets: inks }));
      assert.deepEqual([named, book], [[], []]);
    });
    it('what no encoding that the target takes would help', () => {
      const only = [target('dry-toner', { route: 'inks', encodings: ['rgb-neutral'] })];
      assert.deepEqual(found(picture('rgb-neutral', { targets: only })).named, []);
    });
    it('ink values where nobody said that they are taken', () =>
      assert.deepEqual(found(picture('rgb-neutral', { targets: [target('dry-toner')] })).named, []));
    it('tones, colour and line art that are meant', () => {
      const book = (['toned', 'colour', 'line'] as const).map(intent =>
        picture('rgb-toned', { tone: [4, 12], intent, targets: inks }),
      );
      assert.deepEqual(found(...book).named, []);
    });
    it('sixty pictures on silver halide: one note for the book about the process', () => {
      const { named, book } = found(...pictures(60, 'rgb-neutral'));
      assert.deepEqual(named, []);
      assert.equal(book.length, 1);
      assert.equal(book[0].severity, 'note');
      assert.match(
        book[0].message,
        /^By the forecast all greys come back from silver halide with a visible tint in about \d/,
      );
      assert.equal(book[0].data.basis, 'generic');
      assert.match(book[0].message, /cannot be predicted/, 'no direction without a reading');
      assert.equal(book[0].data.direction, null);
    });
  });

  describe('fails', () => {
    it('R = G = B where black ink alone would be clearly steadier, with both chances and the price', () => {
      const { named, pictures: lists } = found(picture('rgb-neutral', { targets: inks, path: 'a.tif' }));
      assert.deepEqual(named, ['a.tif']);
      const [finding] = lists[0];
      assert.equal(finding.severity, 'warning');
      assert.equal(finding.data.better, 'black-only');
      const { probability, betterProbability } = finding.data as Record<string, number>;
      assert.ok(probability - betterProbability >= 0.2);
      assert.match(
        finding.message,
        /with a visible tint in about 5 orders of 10 on dry toner, and in .* as black-only\. It is/,
      );
      assert.match(finding.message, /^By the forecast/);
      assert.equal(finding.data.basis, 'generic', 'the report says it once, at its head');
      assert.match(
        finding.message,
        /The price of black-only: black prints as L\* 1\d instead of 1\d, and sharp eyes see the screen/,
      );
    });
    it('the probability is the forecast of the picture itself', () => {
      const whole = picture('rgb-neutral', { targets: inks });
      const [[finding]] = found(whole).pictures;
      assert.equal(finding.data.probability, whole.forecasts[0].tint.seen);
    });
    it('inks out of balance', () => {
      const equal = (d: number) => [0.85 * d, 0.85 * d, 0.85 * d, 0];
      const { pictures: lists } = found(
        picture('three-ink', { inks: equal, targets: [target('offset-coated', { route: 'inks' })] }),
      );
      assert.match(
        lists[0][0].message,
        /once the print house says that it takes it/,
        'nobody said what is taken',
      );
    });
    it('a tone that nobody meant, which may yet be meant', () => {
      const { pictures: lists } = found(picture('rgb-toned', { tone: [4, 12] }));
      assert.match(lists[0][0].message, /carries a tone of its own\. .*list it under "toned"/);
      assert.match(
        lists[0][0].message,
        /visible tint, nearly always warm, in/,
        'its own direction, as sure as it is',
      );
    });
    it('of a tone that nobody meant the price too, alone and of many', () => {
      const toned = (n: number) =>
        Array.from({ length: n }, () => picture('rgb-toned', { tone: [4, 12], targets: [black] }));
      const black = target('offset-coated', { route: 'inks', encodings: ['black-only', 'rgb-toned'] });
      const price = /The price of black-only: black prints as L\* \d+ instead of \d+, and sharp eyes/;
      const many = judged([...toned(4), ...pictures(5, 'black-only', { targets: [black] })], 'likely-tint');
      assert.equal(many.book.length, 1);
      assert.match(many.book[0].message, price);
      const [one] = judged(
        [...toned(1), ...pictures(5, 'black-only', { targets: [black] })],
        'likely-tint',
      ).pictures;
      assert.match(one[0].message, price);
    });
    it('inks on a process that takes none, as the guess that they are', () => {
      const equal = (d: number) => [0.85 * d, 0.85 * d, 0.85 * d, 0];
      const { pictures: lists } = found(picture('three-ink', { inks: equal }));
      assert.match(
        lists[0][0].message,
        /^On silver halide the tint and the black of this picture are left to whoever turns its inks into R, G, B: .* Save it as rgb-neutral\. By the forecast a tint is seen, .*; as rgb-neutral in about \d orders of 10.*\. This stands on a guess about what the print house does with inks/,
      );
      const onPress = found(
        picture('three-ink', { inks: equal, targets: [target('offset-coated', { route: 'inks' })] }),
      );
      assert.doesNotMatch(onPress.pictures[0][0].message, /guess/);
    });
    it('inks on a process that takes none, however little less often they are tinted', () => {
      // common practice, no source: what a photographic process is sent is R, G, B or one grey channel
      for (const process of ['silver-halide', 'dye-transfer'] as const)
        for (const encoding of ['black-only', 'four-channel'] as const) {
          const book = pictures(5, encoding, { targets: [target(process)] });
          const [verdict] = found(...book).book.filter(({ severity }) => severity === 'warning');
          assert.equal(verdict.data.better, 'rgb-neutral', `${process} ${encoding}`);
          assert.equal(verdict.data.foreign, true);
          assert.match(verdict.message, /of 5 pictures are left to whoever turns their inks into R, G, B/);
        }
      const [flat] = found(...pictures(1, 'black-only')).pictures[0];
      assert.match(
        flat.message,
        /, and black prints as L\* 13; as rgb-neutral in .*, and black prints as L\* 6\./,
      );
    });
    it('such inks without a figure where prints of the house were read that were not sent so', () => {
      const read = [target('silver-halide', { printRecord: record('silver-halide', 14) })];
      const [verdict] = found(picture('black-only', { targets: read })).pictures[0];
      assert.equal(verdict.data.better, 'rgb-neutral');
      assert.doesNotMatch(verdict.message, /By the forecast/);
    });
    it('no inks that prints of the house were read of', () => {
      const read = [target('silver-halide', { printRecord: record('silver-halide', 14, 'black-only') })];
      assert.deepEqual(found(picture('black-only', { targets: read })).pictures[0], []);
    });
    it('many alike in one line for the book', () => {
      const { named, book } = found(...pictures(30, 'rgb-neutral', { targets: inks }));
      assert.deepEqual(named, []);
      assert.equal(book.length, 1);
      assert.equal(book[0].severity, 'warning');
      assert.match(book[0].message, /^By the forecast 30 pictures print with a visible tint/);
    });
    it('many with their ranges, by what is alike: a direction only of those that have it', () => {
      const press = [target('offset-coated', { route: 'inks', encodings: ['rgb-neutral', 'rgb-toned'] })];
      const toned = (tone: [number, number]) => picture('rgb-toned', { tone, targets: press });
      const warm = [3, 4, 6, 9, 14].map(b => toned([0, b]));
      const greenish = [4, 6, 9, 14].map(a => toned([-a, 0]));
      const { book, named } = found(...warm, ...greenish, ...pictures(20, 'rgb-neutral', { targets: press }));
      const loud = book.filter(({ severity }) => severity === 'warning');
      assert.deepEqual(named, []);
      assert.deepEqual(loud.map(({ data }) => [data.direction, (data.pictures as string[]).length]).sort(), [
        ['greenish', 4],
        ['warm', 5],
      ]);
      const { message, data } = loud.find(finding => finding.data.direction === 'warm')!;
      assert.match(
        message,
        /^By the forecast 5 pictures print with a visible tint, (nearly always|mostly) warm, on average in .* \(from \d to (\d|nearly every one), by picture\) on coated offset, and .* as rgb-neutral: they carry a tone of their own \(.* and 2 more\)/,
      );
      const chances = warm.map(({ forecasts }) => forecasts[0].tint.seen);
      assert.ok(Math.abs((data.probability as number) - chances.reduce((x, y) => x + y) / 5) < 1e-9);
      const [one, two] = [greenish[0], warm[4]].map(of => found(of, ...greenish.slice(1, 3)).pictures[0][0]);
      assert.match(one.message, /greenish, in/, 'a few are told one by one, each as it is');
      assert.match(two.message, /warm, in/);
    });
    it('no direction for a set that leans both ways', () => {
      const only = [target('offset-coated', { route: 'inks', encodings: ['four-channel'] })];
      const cast = (inks: (d: number) => number[]) => picture('four-channel', { inks, targets: only });
      const warm = cast(d => [0, 0, 0.3 * d, 0.8 * d]);
      const other = cast(d => [0.3 * d, 0, 0, 0.8 * d]);
      assert.notEqual(other.forecasts[0].tint.direction, null);
      const [{ message, data }] = judged([warm, warm, warm, other], 'likely-tint', {
        'likely-tint': ['warning', { gain: 1, tell: 0 }],
      }).book;
      assert.match(message, /Which way it leans differs from picture to picture\. Order a test print/);
      assert.equal(data.direction, null);
    });
    it('and where more were not looked at, the note speaks of these', () => {
      const said = (many: number) => {
        const targets = [target('silver-halide')];
        const some = pictures(many, 'rgb-neutral', { targets });
        const [note] = judge({ pictures: some, targets, partial: true }).book.filter(
          ({ rule }) => rule === 'likely-tint',
        );
        return note.message;
      };
      assert.match(said(1), /^By the forecast this grey comes back from silver halide /);
      assert.match(said(3), /^By the forecast these 3 greys come back from silver halide /);
    });
    it('and then the note speaks of the others only', () => {
      const { book } = found(
        ...pictures(2, 'rgb-neutral', { targets: [target('silver-halide')] }),
        picture('rgb-toned', { tone: [4, 12], targets: [target('silver-halide')] }),
      );
      assert.match(book[0].message, /^By the forecast 2 of 3 grey pictures come back from silver halide /);
      assert.equal((book[0].data.counted as string[]).length, 2);
    });
    it('in the one note: the mean, from where to where, and the direction only of the whole set', () => {
      const cast = (b: number) => (darkness: number) => [0, 0, b * darkness, 0.8 * darkness];
      const only = [target('offset-coated', { route: 'inks', encodings: ['four-channel'] })];
      const yellow = (b: number) => picture('four-channel', { inks: cast(b), targets: only });
      const note = (...book: BookPicture[]) =>
        judged(book, 'likely-tint', { 'likely-tint': ['warning', { gain: 1, tell: 0 }] }).book[0];
      const [none, some, much] = [yellow(0), yellow(0.06), yellow(0.3)];
      assert.equal(none.forecasts[0].tint.direction, null);
      assert.equal(much.forecasts[0].tint.direction, 'warm');
      const leaning = note(none, much, much, much);
      assert.match(
        leaning.message,
        /with a visible tint on average in about \d orders of 10 \(from .* to .*, by picture\); .*Faint tints counted too, it leans warm in (about \d orders of 10|nearly every order)\./,
      );
      assert.equal(leaning.data.direction, 'warm', 'though one of them has none');
      const not = note(none, none, none, some);
      assert.match(not.message, /cannot be predicted/);
      assert.equal(not.data.direction, null);
    });
    it('not more than the settings ask for', () => {
      const book = [picture('rgb-neutral', { targets: inks })];
      assert.deepEqual(judged(book, 'likely-tint', { 'likely-tint': ['warning', { gain: 0.6 }] }).named, []);
    });
  });
});

import assert from 'node:assert/strict';
import { judged } from '../support/judged';
import { type PictureOptions, picture, pictures, target, toneOf } from '../support/pictures';

const RULE = 'odd-one-out';
const inks = [target('offset-coated', { route: 'inks' })];
const refusing = [target('silver-halide', { encodings: ['rgb-neutral'] })];
const toned = (n: number, tone: [number, number], more: PictureOptions = {}) =>
  pictures(n, 'rgb-toned', { tone, targets: inks, ...more });
const odd = (tone: [number, number], more: PictureOptions = {}) =>
  picture('rgb-toned', { path: 'odd.tif', tone, targets: inks, ...more });

/** A picture without a target, with its own colour as it is read. */
function stored([a, b]: [number, number]) {
  const whole = picture('rgb-toned', { targets: [] });
  whole.facts.chroma!.zones = toneOf([
    [30, a, b],
    [60, a, b],
    [85, a, b],
  ]);
  return whole;
}

describe('odd-one-out', () => {
  describe('passes', () => {
    const books: [string, ReturnType<typeof pictures>[]][] = [
      [
        'neutral pictures of any subject',
        [pictures(20, 'rgb-neutral'), pictures(5, 'rgb-neutral', { tones: [5, 10, 20, 40] })],
      ],
      ['one tint that all have', [toned(8, [3, 7])]],
      [
        'other encodings: another rule says so',
        [
          toned(8, [3, 7]),
          pictures(1, 'rgb-neutral', { targets: inks }),
          pictures(1, 'black-only', { targets: inks }),
        ],
      ],
      ['two and three with one cast', [toned(2, [0, 2]), toned(3, [0, 2], { part: 'cover' })]],
      [
        'two or three tones that are meant: each may be',
        [toned(2, [3, 7], { intent: 'toned' }), [odd([-4, -6], { intent: 'toned' })]],
      ],
      [
        'two casts among other encodings: another rule says so',
        [[odd([0, 3]), odd([0, -3])], pictures(4, 'rgb-neutral', { targets: inks })],
      ],
      [
        'two casts that the print house refuses: another rule says so',
        [
          pictures(1, 'rgb-toned', { tone: [0, 3], targets: refusing }),
          pictures(1, 'rgb-toned', { tone: [0, -3], targets: refusing }),
        ],
      ],
      [
        'a tone that is meant, a part of its own',
        [toned(5, [3, 7]), [odd([-4, -6], { intent: 'toned' })], [odd([-4, -6], { part: 'cover' })]],
      ],
    ];
    for (const [what, groups] of books)
      it(what, () => {
        const { named, book } = judged(groups.flat(), RULE);
        assert.deepEqual([named, book], [[], []]);
      });
    it('inks that nobody prints yet', () => {
      const mix = (c: number) => (d: number) => [d * c, d * 0.5, d * 0.5, 0];
      const inks = [0.6, 0.35].map(c => picture('three-ink', { targets: [], inks: mix(c) }));
      assert.deepEqual(judged(inks, RULE).book, []);
    });
    it('two on one spread: another rule says so', () => {
      const two = [...toned(1, [0, 3]), ...toned(1, [0, -3])];
      const spread = two.map(({ path }) => path);
      assert.equal(judged(two, RULE).book.length, 1);
      assert.deepEqual(judged(two, RULE, {}, [spread]).book, []);
    });
    it('a tone with a reference: another rule says so', () => {
      const set = [...toned(5, [3, 7], { intent: 'toned' }), odd([-4, -6], { intent: 'toned' })];
      for (const one of set) one.reference = 'reference.tif';
      assert.deepEqual(judged(set, RULE).named, []);
    });
  });

  describe('fails', () => {
    it('among greys with a trace of colour and without, called what they are', () => {
      const rgb = (n: number, tone: [number, number], encoding: 'rgb-neutral' | 'rgb-residual') =>
        pictures(n, encoding, { tone, targets: inks });
      const { pictures: lists } = judged(
        [...rgb(7, [0, 0], 'rgb-neutral'), ...rgb(1, [-4, -6], 'rgb-residual')],
        RULE,
      );
      assert.match(
        lists[7][0].message,
        /8 pictures that are rgb-neutral \(RGB with R = G = B\) or rgb-residual \(RGB grey with left-over colour\) like it/,
      );
    });
    it('the one whose cast differs, with how far and which way', () => {
      const { named, book, pictures: lists } = judged([...toned(8, [3, 7]), odd([-4, -6])], RULE);
      assert.deepEqual([named, book], [['odd.tif'], []]);
      const [finding] = lists[8];
      assert.equal(finding.severity, 'warning');
      assert.match(
        finding.message,
        /on coated offset: by the forecast it is about \d+\.\d away in a\*, b\*, more bluish, from most of 9 pictures that are rgb-toned \(.*\) like it, which is seen side by side (in about \d orders of 10|in nearly every order)\. The others are toned in another way: if their tone is meant, tone it again/,
      );
    });
    it('a tone among tones, and a separation among separations', () => {
      const tones = judged(
        [...toned(5, [3, 7], { intent: 'toned' }), odd([9, 2], { intent: 'toned' })],
        RULE,
      );
      assert.match(tones.pictures[5][0].message, /tone it again from the grey original/);
      const mix = (c: number) => (d: number) => [d * c, d * 0.5, d * 0.5, 0];
      const three = (c: number, path?: string) => picture('three-ink', { path, targets: inks, inks: mix(c) });
      const separations = judged([three(0.6), three(0.6), three(0.6), three(0.35, 'odd.tif')], RULE);
      assert.deepEqual(separations.named, ['odd.tif']);
      assert.match(separations.pictures[3][0].message, /separate it again from its grey original/);
    });
    it('a set without one tint, in one line for the book', () => {
      const strays: [number, number][] = [
        [-4, -6],
        [9, 2],
        [-6, 5],
        [2, -8],
      ];
      const { named, book } = judged([...toned(9, [3, 7]), ...strays.flatMap(tone => toned(1, tone))], RULE);
      assert.deepEqual(named, []);
      assert.match(
        book[0].message,
        /^The 13 pictures that are rgb-toned .* are unlikely to match each other on coated offset: by the forecast 4 of them \(.*\) are about \d+\.\d or more away in a\*, b\* from 9 others, which are alike\. The others are toned in another way: if their tone is meant, tone them again from their grey originals as they are/,
      );
      assert.equal((book[0].data.pictures as string[]).length, 4);
    });
    it('two tones whose middle nobody has: what is off the larger set, never all of them', () => {
      // [3, 7] by a curve of its own: pictures of other lightnesses are of the same tone
      const sepias = [
        ...toned(2, [3, 7], { tones: [8, 20, 30, 45] }),
        ...toned(2, [3, 7], { tones: [20, 45, 60, 90] }),
      ];
      const strays = (
        [
          [0, -3],
          [0, 1],
          [-5, -2],
          [6, -3],
        ] as const
      ).flatMap(([a, b]) => toned(1, [a, b]));
      const { named, book } = judged([...sepias, ...strays], RULE);
      assert.deepEqual([named, book.length], [[], 1]);
      assert.match(book[0].message, /by the forecast 4 of them .* from 4 others, which are alike/);
      assert.deepEqual(
        book[0].data.pictures,
        strays.map(({ path }) => path),
      );
      const three = judged([...sepias, ...strays.slice(0, 3)], RULE);
      assert.equal(three.named.length, 3);
      assert.match(three.pictures[4][0].message, /most of 7 pictures .*The others are toned/);
    });
    it('pictures of which no two are alike, without others to be away from', () => {
      const { named, book } = judged(
        (
          [
            [0, -8],
            [0, 8],
            [-8, 0],
            [8, 0],
          ] as const
        ).flatMap(([a, b]) => toned(1, [a, b])),
        RULE,
      );
      assert.deepEqual([named, book.length], [[], 1]);
      assert.match(book[0].message, /^The 4 pictures .* hardly two of them are alike .*turn all of them/);
      assert.equal((book[0].data.pictures as string[]).length, 4);
    });
    it('two or three whose casts differ on facing pages, without saying which one is odd', () => {
      for (const casts of [
        [1.4, -1.3],
        [1.4, 0, -1.3],
      ]) {
        // a house that prints R, G, B, where a cast this weak is no visible tint in most orders
        const few = casts.flatMap((b, i) =>
          pictures(1, 'rgb-toned', { tone: [0, b], path: `cast ${i}.jpg` }),
        );
        const { named, book } = judged(few, RULE);
        assert.deepEqual([named, book.length, book[0].severity], [[], 1, 'warning']);
        assert.match(
          book[0].message,
          /unlikely to match each other on silver halide: by the forecast cast 0\.jpg is about 2\.\d away in a\*, b\*, warmer, from cast [12]\.jpg, which is seen side by side in .* Their values have different colours/,
        );
        assert.deepEqual(
          book[0].data.pictures,
          few.map(({ path }) => path),
        );
      }
    });
    it('in a book that nobody prints yet, by the colours in the files', () => {
      const { book } = judged([stored([0, 1.4]), stored([0, -1.3])], RULE);
      assert.match(
        book[0].message,
        /match each other: by the colours in the files .* is about 2\.7 away .*, and from about 2 on that is seen side by side\./,
      );
      assert.equal('target' in book[0].data, false);
      const { named } = judged([...[0, 1, 2, 3].map(() => stored([3, 7])), stored([-4, -6])], RULE);
      assert.equal(named.length, 1);
      assert.deepEqual(judged([stored([0, 0.7]), stored([0, -0.7])], RULE).book, []);
    });
    it('a cast among casts: to be turned into grey as the others were', () => {
      const { pictures: lists } = judged([...toned(5, [0, 1.5]), odd([0, -3])], RULE);
      assert.match(lists[5][0].message, /Its values have another colour: turn it into grey again/);
    });
    it('from the distance and the chance that are set', () => {
      const set = (options: Record<string, unknown>) =>
        judged([...toned(8, [3, 7]), odd([4.4, 8])], RULE, { [RULE]: ['error', options] }).named;
      assert.deepEqual([set({ limit: 1 }), set({ limit: 4 })], [['odd.tif'], []]);
    });
  });
});

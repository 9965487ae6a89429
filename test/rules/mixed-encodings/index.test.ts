import assert from 'node:assert/strict';
import { judged } from '../support/judged';
import { picture, pictures, target } from '../support/pictures';

const found = (...groups: ReturnType<typeof pictures>[]) => judged(groups.flat(), 'mixed-encodings');

describe('mixed-encodings', () => {
  describe('passes', () => {
    const uniform: [string, ReturnType<typeof pictures>[]][] = [
      ['one encoding', [pictures(5, 'black-only')]],
      [
        'R = G = B with a trace of colour among R = G = B',
        [pictures(5, 'rgb-neutral'), pictures(1, 'rgb-residual')],
      ],
      ['parts that differ', [pictures(3, 'rgb-neutral'), pictures(3, 'black-only', { part: 'cover' })]],
      ['a tone that is meant', [pictures(3, 'rgb-neutral'), pictures(1, 'rgb-toned', { intent: 'toned' })]],
      [
        'line art',
        [pictures(3, 'rgb-neutral'), pictures(2, 'bilevel'), pictures(2, 'black-only', { intent: 'line' })],
      ],
      [
        'colour',
        [pictures(3, 'rgb-neutral'), pictures(2, 'colour'), pictures(1, 'black-only', { intent: 'colour' })],
      ],
    ];
    for (const [what, groups] of uniform)
      it(what, () => {
        const { named, book } = found(...groups);
        assert.deepEqual([named, book], [[], []]);
      });
    it('what its target does not take: another rule says so', () => {
      const targets = [target('offset-coated', { encodings: ['rgb-neutral'] })];
      const { named, book } = found(
        pictures(3, 'rgb-neutral', { targets }),
        pictures(1, 'black-only', { targets }),
      );
      assert.deepEqual([named, book], [[], []]);
    });
  });

  describe('fails', () => {
    it('the odd one, with the majority and the way out', () => {
      const {
        named,
        book,
        pictures: lists,
      } = found(pictures(39, 'rgb-neutral'), [picture('black-only', { path: 'odd.tif' })]);
      assert.deepEqual(named, ['odd.tif']);
      assert.deepEqual(book, []);
      const [finding] = lists[39];
      assert.equal(finding.severity, 'warning');
      assert.match(
        finding.message,
        /it is black-only \(black ink alone\), and 39 of 40 pictures are rgb-neutral/,
      );
      assert.match(
        finding.message,
        /Save it as rgb-neutral\. This stands on a guess about what the print house does with inks/,
        'silver halide takes none',
      );
    });
    it('pictures with a trace of colour counted as the table counts them', () => {
      const { pictures: lists } = found(
        pictures(3, 'rgb-neutral'),
        pictures(2, 'rgb-residual'),
        pictures(1, 'black-only'),
      );
      assert.match(
        lists[5][0].message,
        /5 of 6 pictures are rgb-neutral .*, 2 of them with left-over colour/,
      );
    });
    it('pictures with a trace of colour as what they are, not as R = G = B', () => {
      const [odd] = found(pictures(3, 'single-channel'), pictures(1, 'rgb-residual')).pictures[3];
      assert.match(odd.message, /: it is rgb-residual \(RGB grey with left-over colour\), and 3 of 4/);
      assert.equal(odd.data.encoding, 'rgb-residual');
      const [other] = found(pictures(1, 'black-only'), pictures(3, 'rgb-residual')).pictures[0];
      assert.match(other.message, /3 of 4 pictures are rgb-residual \(RGB grey with left-over colour\)\./);
    });
    it('inks as what is to be converted where the process has none, however many they are', () => {
      const { book, named } = found(pictures(5, 'black-only'), pictures(1, 'rgb-neutral'));
      assert.equal(named.length, 0);
      assert.deepEqual(book[0].data.best, ['rgb-neutral']);
      assert.equal((book[0].data.convert as string[]).length, 5);
      assert.doesNotMatch(book[0].message, /shortest way/);
    });
    it('what goes one way through the machine as what may differ, and no more', () => {
      const { book } = found(pictures(2, 'rgb-neutral'), pictures(2, 'single-channel'));
      assert.match(book[0].message, /^The pictures may not match each other in print/);
      const { pictures: lists } = found(pictures(3, 'rgb-neutral'), pictures(1, 'single-channel'));
      assert.match(lists[3][0].message, /^This picture may print in another grey/);
      const onPress = { targets: [target('offset-coated')] };
      const press = found(pictures(2, 'rgb-neutral', onPress), pictures(2, 'single-channel', onPress));
      assert.match(press.book[0].message, /^The pictures are unlikely to match/);
    });
    it('one grey channel among R = G = B', () =>
      assert.equal(found(pictures(3, 'rgb-neutral'), pictures(1, 'single-channel')).named.length, 1));
    it('inks that stand on a guess, in the one line for a split book too', () => {
      const split = found(pictures(2, 'rgb-neutral'), pictures(2, 'black-only')).book[0];
      assert.match(split.message, /to convert\. This stands on a guess about what .* inks/);
      const none = found(pictures(2, 'rgb-neutral'), pictures(2, 'single-channel')).book[0];
      assert.doesNotMatch(none.message, /guess/);
    });
    it('a tone that nobody meant, which may yet be meant', () => {
      const { pictures: lists } = found(pictures(3, 'rgb-neutral'), pictures(1, 'rgb-toned'));
      assert.match(lists[3][0].message, /list it under "toned"/);
    });
    it('a neutral one among toned ones', () => {
      const { pictures: lists } = found(
        pictures(3, 'rgb-toned', { intent: 'toned' }),
        pictures(1, 'rgb-neutral', { intent: 'toned' }),
      );
      assert.match(lists[3][0].message, /^This picture is likely to stand out among toned neighbours/);
    });
    it('a book that is evenly split, in one line; the steadier encoding is the way', () => {
      const targets = [target('dry-toner', { route: 'inks' })];
      const halves = [pictures(2, 'rgb-neutral', { targets }), pictures(2, 'black-only', { targets })];
      for (const order of [halves, halves.toReversed()]) {
        const { named, book } = found(...order);
        assert.doesNotMatch(book[0].message, /unlike most/);
        assert.deepEqual(named, []);
        assert.equal(book.length, 1);
        assert.deepEqual(book[0].data.best, ['black-only']);
        assert.match(
          book[0].message,
          /black-only.* \(the work is the same whichever is chosen; by the forecast/,
        );
        assert.doesNotMatch(book[0].message, /fewest/);
        assert.match(
          book[0].message,
          /to convert\. The price of black-only: black prints as L\* 17 instead of 14, and sharp/,
        );
      }
    });
    it('an even split whose way is neither: nothing is said of how much work it is', () => {
      const targets = [target('offset-coated', { route: 'separated' })];
      const { book } = found(
        pictures(2, 'black-only', { targets }),
        pictures(2, 'four-channel', { targets }),
      );
      assert.match(book[0].message, /Save all of them as (rgb-neutral|single-channel)/);
      assert.doesNotMatch(book[0].message, /the work is the same|fewest/);
      assert.match(book[0].message, /That leaves all of them to convert\./);
    });
    it('what is to be changed, not the few that are right already', () => {
      const targets = [target('dry-toner', { route: 'inks' })];
      const { named, book } = found(
        ['a.tif', 'c.tif'].map(path => picture('rgb-neutral', { path, targets })),
        [picture('black-only', { path: 'b.tif', targets })],
      );
      assert.deepEqual(named, []);
      const [{ message, data }] = book;
      assert.match(
        message,
        /^The pictures are unlikely to match each other in print: 2 are rgb-neutral .* and 1 is black-only .*; unlike most: b\.tif\. Save all of them as black-only.* That leaves a\.tif and c\.tif to convert\./,
      );
      assert.deepEqual(data.convert, ['a.tif', 'c.tif']);
      assert.deepEqual(data.odd, ['b.tif']);
    });
    it('tones that may be meant, among those to be changed', () => {
      const { book } = found(pictures(2, 'rgb-neutral'), pictures(2, 'rgb-toned'));
      assert.match(
        book[0].message,
        /Save all of them as rgb-neutral.*, but list those whose tone is meant under "toned" in the settings' "intent"\. That/,
      );
    });
    it('with the price, of the odd one or of its neighbours, and none where it is deeper', () => {
      const steady = [target('dry-toner', { route: 'inks' })];
      const one = picture('rgb-neutral', { targets: steady });
      const odd = found(pictures(3, 'black-only', { targets: steady }), [one]).pictures[3][0];
      assert.match(
        odd.message,
        /Save it as black-only\. The price of black-only: black prints as L\* 17 instead of 14/,
      );
      const [right] = found(pictures(3, 'rgb-neutral', { targets: steady }), [
        picture('black-only', { targets: steady }),
      ]).book;
      assert.match(
        right.message,
        /Save all of them as black-only.* The price of black-only: black prints as L\* 17/,
      );
      assert.equal(odd.data.save, 'black-only');
      assert.match(String(right.data.save), /^black-only/);
      const deep = [target('offset-coated', { route: 'inks' })];
      const deeper = found(pictures(3, 'rgb-neutral', { targets: deep }), [
        picture('black-only', { targets: deep }),
      ]).pictures[3][0];
      assert.match(deeper.message, /Save it as rgb-neutral\.$/);
    });
    it('with the shortest way, where what prints best is more work', () => {
      const steady = [target('dry-toner', { route: 'inks' })];
      const [right] = found(pictures(3, 'rgb-neutral', { targets: steady }), [
        picture('black-only', { targets: steady }),
      ]).book;
      assert.match(
        right.message,
        /to convert\. The shortest way to one encoding would be rgb-neutral: 1 picture to convert instead of 3\. The price/,
      );
      const { book } = found(
        pictures(3, 'rgb-neutral', { targets: steady }),
        pictures(2, 'black-only', { targets: steady }),
        pictures(1, 'four-channel', { targets: steady }),
      );
      assert.match(book[0].message, /would be rgb-neutral: 3 pictures to convert instead of 4\./);
      const { pictures: lists } = found(pictures(3, 'rgb-neutral'), pictures(1, 'single-channel'));
      assert.doesNotMatch(lists[3][0].message, /shortest/);
    });
    it('three kinds without a majority, largest first', () => {
      const { book } = found(
        pictures(2, 'single-channel'),
        pictures(3, 'rgb-neutral'),
        pictures(1, 'black-only', { path: 'last.tif' }),
      );
      assert.match(
        book[0].message,
        /3 are rgb-neutral .*, 2 are single-channel .* and 1 is black-only .*\(it leaves the fewest to convert\)/,
      );
    });
  });
});

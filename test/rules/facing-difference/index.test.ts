import assert from 'node:assert/strict';
import type { BookPicture } from '../../../src/shared/finding';
import { judged } from '../support/judged';
import { type PictureOptions, picture, pictures, target, unreadable } from '../support/pictures';

const RULE = 'facing-difference';
const inks = [target('offset-coated', { route: 'inks' })];
const toned = (path: string, tone: [number, number], more: PictureOptions = {}) =>
  picture('rgb-toned', { path, tone, targets: inks, ...more });
const neutral = (path: string, more: PictureOptions = {}) =>
  picture('rgb-neutral', { path, targets: inks, ...more });

/** The named pictures face each other, among others that are neutral. */
const facing = (...seen: BookPicture[]) =>
  judged([...seen, ...pictures(4, 'rgb-neutral', { targets: inks })], RULE, {}, [
    seen.map(({ path }) => path),
  ]);

describe('facing-difference', () => {
  describe('passes', () => {
    const pairs: [string, BookPicture[]][] = [
      [
        'two of one encoding, however dark and light',
        [neutral('a.tif', { tones: [5, 15, 25, 50] }), neutral('b.tif', { tones: [40, 60, 80, 95] })],
      ],
      ['a trace of colour', [neutral('a.tif'), toned('b.tif', [0.6, 0.6])]],
      [
        'a tone that is meant beside a grey',
        [neutral('a.tif'), toned('b.tif', [5, 12], { intent: 'toned' })],
      ],
      [
        'tones that match',
        [toned('a.tif', [4, 9], { intent: 'toned' }), toned('b.tif', [4, 9], { intent: 'toned' })],
      ],
      ['line art', [neutral('a.tif'), picture('bilevel', { path: 'b.tif', targets: inks, intent: 'line' })]],
      [
        'what could not be read',
        [neutral('a.tif'), unreadable('empty', 'Empty.', { path: 'b.tif', targets: inks })],
      ],
      [
        'pictures that are printed elsewhere',
        [neutral('a.tif'), toned('b.tif', [5, 12], { targets: [target('inkjet', { name: 'other' })] })],
      ],
      ['one picture alone on its spread', [toned('a.tif', [5, 12])]],
    ];
    for (const [what, seen] of pairs)
      it(what, () => {
        const { named, book } = facing(...seen);
        assert.deepEqual([named, book], [[], []]);
      });
    it('pictures that no spread brings together', () => {
      const { named } = judged([neutral('a.tif'), toned('b.tif', [5, 12])], RULE);
      assert.deepEqual(named, []);
    });
    it('what the printer does to two equal files too', () => {
      const wild = [target('silver-halide')].map(t => ({ ...t, name: 'wild' }));
      const pair = ['a.tif', 'b.tif'].map(path => picture('rgb-neutral', { path, targets: wild }));
      for (const { forecasts } of pair) forecasts[0].spread.page = { a: 4, b: 4 };
      assert.deepEqual(judged(pair, RULE, {}, [['a.tif', 'b.tif']]).named, []);
    });
  });

  describe('fails', () => {
    it('two of different tone, of the one that is further from the book, with where it lies', () => {
      for (const order of [
        [neutral('a.tif'), toned('b.tif', [4, 10])],
        [toned('b.tif', [4, 10]), neutral('a.tif')],
      ]) {
        const { named, pictures: lists } = facing(...order);
        assert.deepEqual(named, ['b.tif']);
        const [finding] = lists.flat();
        assert.equal(finding.severity, 'warning');
        assert.match(
          finding.message,
          /^Beside a\.tif on the same spread this picture is likely to look warmer on coated offset: /,
        );
        assert.match(
          finding.message,
          /about \d+\.\d apart in a\*, b\*, which is seen in (about \d orders of 10|nearly every order)/,
        );
        assert.match(
          finding.message,
          /It is rgb-toned .*, and a\.tif is rgb-neutral .*\. Save it as rgb-neutral/,
        );
        assert.equal(finding.data.beside, 'a.tif');
        assert.ok((finding.data.difference as { b: number }).b > 3, 'its own side of the difference');
      }
    });
    it('two of which each is told what becomes of it, and none to become what it is', () => {
      const way = (book: BookPicture[], ...seen: BookPicture[]) =>
        judged([...seen, ...book], RULE, {}, [seen.map(({ path }) => path)])
          .pictures.flat()[0]
          .message.split('). ')
          .at(-1);
      const [cast, plain] = [toned('a.tif', [4, 10]), neutral('b.tif')];
      assert.match(
        way(pictures(4, 'rgb-neutral', { targets: inks }), cast, plain)!,
        /^Save it as rgb-neutral/,
      );
      assert.match(
        way(pictures(4, 'black-only', { targets: inks }), cast, plain)!,
        /^Save both as black-only/,
      );
      assert.match(way([], cast, plain)!, /^Leave it, and save a\.tif as rgb-neutral/);
    });
    it('two tones that are meant and do not match', () => {
      const { named, pictures: lists } = facing(
        toned('a.tif', [4, 10], { intent: 'toned' }),
        toned('b.tif', [8, -4], { intent: 'toned' }),
      );
      assert.deepEqual(named, ['b.tif'], 'of two alike far the later');
      assert.match(
        lists.flat()[0].message,
        /Both are rgb-toned .*, with different tones\. Give both the same one\.$/,
      );
    });
    it('a trace of colour beside none, each called what it is', () => {
      const { pictures: lists } = facing(
        picture('rgb-residual', { path: 'a.tif', targets: inks, tone: [5, 8] }),
        picture('rgb-neutral', { path: 'b.tif', targets: inks }),
      );
      assert.match(
        lists.flat()[0].message,
        /It is rgb-\w+ \([^)]*\), and [ab]\.tif is rgb-\w+ \([^)]*\), with values of different colour/,
      );
    });
    it('inks that are mixed in different ways', () => {
      const mix = (c: number) => (d: number) => [d * c, d * 0.5, d * 0.5, 0];
      const { named, pictures: lists } = facing(
        picture('three-ink', { path: 'a.tif', targets: inks, inks: mix(0.6) }),
        picture('three-ink', { path: 'b.tif', targets: inks, inks: mix(0.4) }),
      );
      assert.equal(named.length, 1);
      assert.match(lists.flat()[0].message, /Both are three-ink .*, with values of different colour/);
    });
    it('two that only drift apart, in whatever direction', () => {
      const [steady, loose] = ['a.tif', 'b.tif'].map(path => neutral(path));
      Object.assign(loose.forecasts[0].spread, { order: { a: 4, b: 4 } });
      const { pictures: lists } = facing(steady, loose);
      assert.match(
        lists.flat()[0].message,
        /likely to look unlike it on coated offset, in one order this way and in the next another/,
      );
    });
    it('one finding a spread, on its worst pair; the target is named where there are several', () => {
      const both = [...inks, target('inkjet', { name: 'dummy' })];
      const { pictures: lists } = facing(
        neutral('a.tif', { targets: both }),
        toned('b.tif', [3, 6], { targets: both }),
        toned('c.tif', [5, 14], { targets: both }),
      );
      assert.equal(lists.flat().length, 1);
      assert.match(lists.flat()[0].message, /^Beside a\.tif .*\(target "[\w-]+"\)/);
    });
    it('from the distance and the chance that are set', () => {
      const pair = [neutral('a.tif'), toned('b.tif', [1.2, 2])];
      const set = (options: Record<string, unknown>) =>
        judged(pair, RULE, { [RULE]: ['error', options] }, [['a.tif', 'b.tif']]).named;
      assert.deepEqual([set({ limit: 1 }), set({ limit: 5 })], [['b.tif'], []]);
    });
  });
});

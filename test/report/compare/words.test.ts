import assert from 'node:assert/strict';
import { closing, happened, matched, revisions, stored, tints } from '../../../src/report/compare/words';
import type { Match, PictureChange } from '../../../src/shared/comparison';
import { brokenFacts } from '../../book/support/facts';
import { finding, picture } from '../text/support';
import { blank, change, comparison, page } from './support';

const match = (verdict: Match['verdict'], more: Partial<Match> = {}): Match => ({
  ...{ target: 'book', verdict, rules: [], waived: false, distance: 0, probability: 0 },
  ...more,
});
describe('a comparison in words', () => {
  it('says of pictures that took each other\u2019s names that nothing else happened to them', () => {
    const renamed = change('renamed', 'a', [], { from: 'b' });
    assert.equal(happened(renamed), 'renamed from b, content unchanged');
    assert.equal(happened({ ...renamed, swapped: true }), 'names swapped, renamed from b, content unchanged');
  });

  it('says of what is placed and not there just that', () => {
    const missing = blank('a');
    const gone = change('added', 'a', [page(picture('a'), missing)]);
    const never = change('added', 'b', [page(null, missing)]);
    assert.equal(happened(gone), 'not there any more, and still placed');
    assert.equal(happened(never), 'placed by a layout, and not there');
    assert.deepEqual(
      [gone, never].map(({ pages }) => stored(pages[0])),
      ['was stored as rgb-neutral', ''],
    );
    assert.equal(
      stored(page(missing, picture('a'))),
      'stored as rgb-neutral; before, it was placed and not there',
    );
    assert.equal(stored(page(missing, null)), 'was placed and not there');
  });

  it('says where a picture stands without a word that could be a time', () => {
    const at = (neighbours: Partial<PictureChange['neighbours']>) =>
      happened(
        change('changed', 'b', [], {
          faced: neighbours.beside ?? [],
          neighbours: { before: null, after: null, beside: [], ...neighbours },
        }),
      );
    assert.equal(at({ before: 'a', after: 'c' }), 'changed, between a and c');
    assert.equal(at({ before: 'a' }), 'changed, next to a');
    assert.equal(at({ after: 'c', beside: ['d'] }), 'changed, next to c, on a spread with d');
    assert.equal(at({ after: 'c', beside: ['c'] }), 'changed, on a spread with c');
    assert.equal(at({}), 'changed');
  });

  it('calls revisions as they were asked for, and by their commits', () => {
    const both = comparison([], { mergeBase: true });
    assert.equal(
      revisions(both),
      'Before: main (parted at aaaaaaaaaa). After: the current commit (bbbbbbbbbb).',
    );
    both.base.asked = 'aaaaaaa';
    assert.match(revisions(both), /^Before: aaaaaaaaaa\. /, 'not twice');
  });

  it('counts as staying only what was looked at', () => {
    assert.match(closing(comparison([])), / As before: 0 errors/);
    assert.match(closing(comparison([], { unread: 200 })), / As before, of what was looked at: 0 errors/);
  });

  it('says what faced a changed picture before, where that was another', () => {
    const on = (faced: string[], beside: string[], kind: PictureChange['kind'] = 'changed') =>
      happened(change(kind, 'a', [], { faced, neighbours: { before: null, after: null, beside } }));
    assert.equal(on(['b'], ['c']), 'changed, on a spread with c (before with b)');
    assert.equal(on([], ['c']), 'changed, on a spread with c (before on none)');
    assert.equal(on(['b'], []), 'changed, on no spread any more (before with b)');
    assert.equal(on(['c', 'b'], ['b', 'c']), 'changed, on a spread with b and c');
    assert.equal(on([], ['c'], 'added'), 'new, on a spread with c');
    assert.equal(on(['b'], [], 'deleted'), 'no longer in the book');
    const still = (why: PictureChange['still']) => happened(change('deleted', 'a', [], { still: why }));
    assert.equal(still('left-out'), 'left out of the check since, and its file still there');
    assert.equal(still('unplaced'), 'placed by no layout any more, and its file still there');
  });

  it('say what a check of the base counts, where that is not what ended and stayed', () => {
    const { summary } = comparison([]);
    const grown = { ...summary, base: { ...summary.base, warnings: 1 } };
    const counted = closing(comparison([], { summary: grown }));
    assert.match(counted, /\. Before, a check counted 0 errors, 1 warning, 0 notes\.$/);
    const broken = page(picture('a'), picture('a', [], brokenFacts('truncated')));
    assert.match(
      closing(comparison([change('changed', 'a', [broken])], { summary: grown })),
      /0 notes: nothing has ended that was said of a picture which is not there any more, or cannot be read\.$/,
    );
    const lowered = { ...summary, base: { ...summary.base, warnings: 1 }, regraded: 1 };
    assert.match(
      closing(comparison([], { summary: { ...lowered, unchanged: { ...summary.unchanged, notes: 1 } } })),
      /Before, a check counted 0 errors, 1 warning, 0 notes: the settings have 1 finding count for more or less, which is neither new nor ended\.$/,
    );
    assert.doesNotMatch(closing(comparison([])), /a check counted/);
    const waived = [{ path: 'a', page: 1, finding: { ...finding('x', 'warning', ''), reason: '' } }];
    assert.match(
      closing(comparison([], { summary: grown, waived })),
      /1 warning, 0 notes: what this change waives counts no more, and has not ended\.$/,
    );
  });

  it('says how a picture is and was stored, and how often a tint is seen', () => {
    const [before, after] = [picture('a'), picture('a', [], { encoding: 'black-only' })];
    assert.equal(stored(page(before, after)), 'stored as rgb-neutral, now black-only');
    assert.equal(stored(page(before, before)), 'stored as rgb-neutral');
    assert.equal(stored(page(before, null)), 'was stored as rgb-neutral');
    const broken = picture('a', [], { encoding: 'unreadable' });
    assert.equal(stored(page(null, broken)), 'cannot be read');
    assert.equal(stored(page(broken, null)), 'could not be read');
    assert.equal(stored(page(before, broken)), 'was stored as rgb-neutral, now cannot be read');
    assert.equal(stored(page(broken, after)), 'stored as black-only; before, it could not be read');
    const away = structuredClone(broken);
    away.facts.unreadable = { reason: 'not-fetched', text: 'A pointer.' };
    assert.equal(stored(page(away, null)), 'was not fetched');
    assert.equal(stored(page(away, away)), 'is not fetched');
    assert.equal(stored(page(away, after)), 'stored as black-only; before, it was not fetched');
    const words = (...of: Parameters<typeof page>) => tints(page(...of)).map(line => line.words);
    assert.match(words(before, before)[0], /^a tint is seen in .* of 10, as before$/);
    assert.match(words(before, null)[0], /^a tint was seen in .* of 10$/);
    assert.match(words(null, before)[0], /^a tint is seen in .* of 10$/);
    const strong = structuredClone(before);
    Object.assign(strong.forecasts[0].tint, {
      direction: 'warm',
      seen: 0.9,
      bands: { neutral: 0, faint: 0.1, visible: 0.9, obvious: 0, heavy: 0 },
    });
    assert.match(
      words(before, strong)[0],
      /^a tint is seen in about 9 orders of 10, warm; before in about \d/,
    );
    assert.deepEqual(words(null, { ...before, forecasts: [] }), []);
  });

  it('says why a picture does not match, and how far off one is that does', () => {
    const why = (of: Match) => matched(page(null, picture('a'), { matches: [of] })).map(({ words }) => words);
    assert.deepEqual(why(match('matches')), ['matches the book']);
    assert.deepEqual(why(match('matches', { distance: 1.23 })), ['matches the book (about 1.2 away)']);
    assert.deepEqual(why(match('differs', { rules: ['mixed-encodings'] })), [
      'does not match the book (mixed-encodings)',
    ]);
    assert.deepEqual(why(match('differs', { rules: ['mixed-encodings'], waived: true })), [
      'does not match the book (mixed-encodings; waived)',
    ]);
    const stored = { as: 'rgb-neutral', others: 'single-channel' } as const;
    assert.deepEqual(why(match('differs', { rules: ['encoding-not-accepted'], stored })), [
      'does not match the book (rgb-neutral among single-channel; encoding-not-accepted)',
    ]);
    assert.deepEqual(why(match('differs', { rules: ['odd-one-out'], distance: 3, probability: 0.8 })), [
      'does not match the book (odd-one-out; about 3.0 away from the others in a*, b*, seen on facing pages in about 8 orders of 10)',
    ]);
    assert.deepEqual(why(match('ahead', { rules: ['mixed-encodings'] })), [
      'stored as all are to be, and others are not yet (mixed-encodings)',
    ]);
    assert.deepEqual(why(match('along', { rules: ['mixed-encodings'], waived: true })), [
      'stored like most of the others, and to be converted with them (mixed-encodings; waived)',
    ]);
    assert.deepEqual(why(match('unknown', { distance: null, probability: null })), []);
    assert.deepEqual(why(match('unknown', { distance: 3, probability: 0.8 })), [
      'whether it matches the book stays open (about 3.0 away from the others in a*, b*, seen on facing pages in about 8 orders of 10)',
    ]);
  });
});

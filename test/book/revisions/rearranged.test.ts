import assert from 'node:assert/strict';
import { facedBefore, rearranged } from '../../../src/book/revisions/rearranged';
import { noSettings } from '../../../src/book/settings/settings';

const entry = { mode: '100644', oid: '1' };
const side = (names: string[], spreads: string[][], layouts: Record<string, string[]> = {}) => ({
  settings: { ...noSettings, spreads },
  pages: new Map(names.map(name => [name, entry])),
  placements: new Map(
    Object.entries(layouts).flatMap(([file, pictures]) =>
      pictures.map(
        (picture, i) => [picture, [{ file, line: i + 1, column: 1, picture, size: null }]] as const,
      ),
    ),
  ),
});
const four = ['p1', 'p2', 'p3', 'p4'];
const told = (...of: Parameters<typeof rearranged>) =>
  rearranged(...of).map(({ path, before, after }) => [path, before.facing.join(), after.facing.join()]);

describe('pictures that stand elsewhere', () => {
  it('are those that face others', () => {
    const before = side(four, [
      ['p1', 'p2'],
      ['p3', 'p4'],
    ]);
    const after = side(four, [
      ['p1', 'p4'],
      ['p3', 'p2'],
    ]);
    assert.deepEqual(told(before, after, []), [
      ['p1', 'p2', 'p4'],
      ['p4', 'p3', 'p1'],
      ['p3', 'p4', 'p2'],
      ['p2', 'p1', 'p3'],
    ]);
    assert.deepEqual(told(before, before, []), []);
  });

  it('faced others before, which are called as they are now', () => {
    const base = side(
      ['p1', 'p2', 'p3'],
      [
        ['p1', 'p2', 'gone'],
        ['p3', 'new'],
      ],
    );
    const change = {
      kind: 'renamed' as const,
      path: 'q2',
      from: 'p2',
      swapped: false,
      before: entry,
      after: entry,
    };
    const faced = facedBefore(base, [change]);
    assert.deepEqual(['p1', 'p2', 'p3', 'new'].map(faced), [['q2'], ['p1'], [], []]);
  });

  it('are the fewest that were moved in a layout, not those that made room', () => {
    const before = side(four, [], { 'book.md': four });
    const after = side(four, [], { 'book.md': ['p4', 'p1', 'p2', 'p3'] });
    const [only, ...others] = rearranged(before, after, []);
    assert.deepEqual(others, []);
    assert.deepEqual([only.path, only.before.after, only.after.after], ['p4', 'p3', null]);
  });

  it('are told between layouts, but not where a layout is only called otherwise', () => {
    const before = side(four, [], { 'a.md': ['p1', 'p2'], 'b.md': ['p3', 'p4'] });
    const moved = side(four, [], { 'a.md': ['p1'], 'b.md': ['p2', 'p3', 'p4'] });
    assert.deepEqual(
      rearranged(before, moved, []).map(({ path, after }) => [path, after.layout]),
      [['p2', 'b.md']],
    );
    const renamed = side(four, [], { 'a.md': ['p1', 'p2'], 'c.md': ['p3', 'p4'] });
    assert.deepEqual(rearranged(before, renamed, []), []);
  });

  it('are called as they are now, and leave out what changed itself', () => {
    const before = side(['old', 'p1', 'p2'], [['p1', 'old'], ['p2']]);
    const after = side(['new', 'p1', 'p2'], [['p1', 'new'], ['p2']]);
    const renamed = {
      kind: 'renamed' as const,
      path: 'new',
      from: 'old',
      swapped: false,
      before: entry,
      after: entry,
    };
    assert.deepEqual(told(before, after, [renamed]), []);
    const added = {
      kind: 'added' as const,
      path: 'new',
      from: null,
      swapped: false,
      before: null,
      after: entry,
    };
    assert.deepEqual(told(before, after, [added]), [['p1', 'old', 'new']]);
  });
});

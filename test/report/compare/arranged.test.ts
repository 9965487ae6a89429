import assert from 'node:assert/strict';
import { arrangedLines, facesOthers } from '../../../src/report/compare/arranged';
import type { Stand } from '../../../src/shared/comparison';

const stand = (facing: string[], after: string | null = null, layout: string | null = null): Stand => ({
  ...{ facing, after, layout },
});
const line = (before: Stand, after: Stand) =>
  arrangedLines({ rearranged: [{ path: 'p4', before, after }] })[0];

describe('pictures that stand elsewhere, in words', () => {
  it('says what they face, else what they follow, and in which layout where that changed', () => {
    assert.equal(line(stand(['p3']), stand(['p1'], 'p1')), 'p4: faced p3, now p1');
    assert.equal(line(stand([]), stand(['p1'])), 'p4: faced no other, now p1');
    assert.equal(line(stand([], 'p3'), stand([])), 'p4: stood after p3, now first');
    assert.equal(
      line(stand([], 'p3', 'a.md'), stand([], 'p1', 'b.md')),
      'p4: stood after p3 in a.md, now after p1 in b.md',
    );
  });

  it('knows whether a changed picture faces others, in whatever order', () => {
    const on = (faced: string[], beside: string[]) =>
      facesOthers({ faced, neighbours: { before: null, after: null, beside } });
    assert.ok(on(['a'], ['b']) && on([], ['b']) && on(['a'], []));
    assert.ok(!on(['a', 'b'], ['b', 'a']) && !on([], []));
  });

  it('names so many, and counts the others', () => {
    const many = Array.from({ length: 14 }, (_, i) => ({
      path: `p${i}`,
      before: stand(['a']),
      after: stand(['b']),
    }));
    const told = arrangedLines({ rearranged: many });
    assert.deepEqual([told.length, told.at(-1)], [13, 'and 2 more']);
  });
});

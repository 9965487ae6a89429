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

  it('tells what went together in a line, and of where it stands only what is otherwise', () => {
    const told = (...stands: [path: string, before: Stand, after: Stand][]) =>
      arrangedLines({ rearranged: stands.map(([path, before, after]) => ({ path, before, after })) });
    assert.deepEqual(
      told(
        ['p4', stand([], 'p3', 'a.md'), stand([], 'p9', 'b.md')],
        ['p5', stand([], 'p4', 'a.md'), stand([], 'p4', 'b.md')],
        ['p6', stand([], 'p5', 'a.md'), stand([], 'p5', 'b.md')],
        ['p7', stand([], 'p6', 'a.md'), stand([], 'p8', 'a.md')],
      ),
      [
        'p4 and the 2 after it: stood after p3 in a.md, now after p9 in b.md',
        'p7: stood after p6, now after p8',
      ],
    );
    const faced = told(['p4', stand([], 'p3'), stand([])], ['p5', stand(['p6'], 'p4'), stand(['p4'], 'p4')]);
    assert.deepEqual(faced, ['p4: stood after p3, now first', 'p5: faced p6, now p4']);
    assert.deepEqual(told(['p4', stand([], 'p3', 'a.md'), stand([], 'p3', 'b.md')]), [
      'p4: stood in a.md, now in b.md',
    ]);
    assert.deepEqual(
      told(['p4', stand([], 'p3', 'a.md'), stand([], 'p9')]),
      ['p4: stood after p3, now after p9'],
      'no layout places pictures any more',
    );
    assert.deepEqual(told(['p4', stand([], 'p3'), stand([], 'p3')]), ['p4: elsewhere, after p3 as before']);
  });

  it('says of none that it faces others because the one before it does', () => {
    const told = arrangedLines({
      rearranged: [
        { path: 'p1', before: stand(['p0']), after: stand(['p5']) },
        { path: 'p2', before: stand([], 'p1', 'a.md'), after: stand([], 'p1', 'a.md') },
      ],
    });
    assert.deepEqual(told, ['p1: faced p0, now p5', 'p2: elsewhere, after p1 as before']);
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
    assert.deepEqual([told.length, told.at(-1)], [13, 'and 2 more'], 'none of them follows another');
  });
});

import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import type { Comparison } from '../../../src/shared/comparison';
import { compared, neutral, picture } from '../revisions/support/compared';
import { commit, repositoryOf } from '../revisions/support/repository';

const toldOf = ({ changes, others }: Comparison, rule: string) => {
  const all = [
    ...changes.flatMap(({ path, pages }) => pages.map(({ findings }) => ({ path, findings }))),
    ...others,
  ];
  const of = (which: 'new' | 'ended') =>
    all.flatMap(({ path, findings }) => findings[which].filter(one => one.rule === rule).map(() => path));
  return { new: of('new'), ended: of('ended') };
};

describe('what is said of two pictures', () => {
  it('stays what it is where their order changes, whichever of them has the finding', async () => {
    const placing = (...names: string[]) => names.map(name => `![p](${name}.tif)\n`).join('\n');
    const top = repositoryOf({
      'evengrey.json': '{ "process": "offset-coated" }',
      'a.tif': neutral(1),
      'b.tif': neutral(1),
      'c.tif': neutral(1),
      'd.tif': neutral(4),
      'book.md': placing('a', 'b', 'd'),
    });
    commit(top, { 'book.md': placing('b', 'd', 'a') });
    const turned = await compared(top, { whole: true });
    assert.deepEqual(toldOf(turned, 'same-picture'), { new: [], ended: [] });
    assert.equal(turned.summary.ended.notes + turned.summary.ended.warnings, 0);
    fs.renameSync(path.join(top, 'b.tif'), path.join(top, 'z.tif'));
    commit(top, { 'book.md': placing('a', 'd', 'z') });
    assert.deepEqual(toldOf(await compared(top, { whole: true }), 'same-picture'), { new: [], ended: [] });
    commit(top, { 'book.md': placing('c', 'a', 'd', 'z') });
    assert.deepEqual(toldOf(await compared(top, { whole: true }), 'same-picture').new.length, 1);
  });

  it('is another thing of another two', async () => {
    const rules = { 'facing-difference': ['warning', { limit: 1, chance: 0.1 }] };
    const facing = (...spread: string[]) =>
      JSON.stringify({ process: 'offset-coated', rules, spreads: [spread] });
    const top = repositoryOf({
      'evengrey.json': facing('a.tif', 'b.tif'),
      'a.tif': neutral(1),
      'b.tif': picture('black-only', 2),
      '0.tif': neutral(3),
      'd.tif': neutral(4),
    });
    commit(top, { 'evengrey.json': facing('0.tif', 'b.tif') });
    const other = await compared(top, { whole: true });
    assert.deepEqual(toldOf(other, 'facing-difference'), { new: ['b.tif'], ended: ['b.tif'] });
    // the later of the two has it
    fs.renameSync(path.join(top, '0.tif'), path.join(top, 'e.tif'));
    commit(top, { 'evengrey.json': facing('b.tif', 'e.tif') });
    const turned = await compared(top, { whole: true });
    assert.deepEqual(toldOf(turned, 'facing-difference'), { new: [], ended: [] });
    const [is] = turned.changes.flatMap(({ pages }) => pages.flatMap(({ findings }) => findings.unchanged));
    assert.deepEqual([is.rule, is.data.beside], ['facing-difference', 'b.tif']);
  });
});

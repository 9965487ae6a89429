import assert from 'node:assert/strict';
import path from 'node:path';
import { FactsCache } from '../../../src/book/cache/cache';
import { compared, neutral, pool, settings } from '../revisions/support/compared';
import { commit, git, repositoryOf } from '../revisions/support/repository';
import { temporaryFolder } from '../support/folder';

const first = (n: number | string) => `${neutral(n)}#said of it`;
const described = (n: number | string) => `${neutral(n)}#said otherwise`;

function changed() {
  const top = repositoryOf({
    ...settings,
    'a.tif': first(1),
    'b.tif': first(2),
    'c.tif': first(3),
    'd.tif': first(4),
  });
  commit(top, {
    'a.tif': described(1),
    'b.tif': first('2 otherwise'),
    'c.tif': first(3).replace('rgb-neutral', 'black-only'),
    'e.tif': first(5),
  });
  return top;
}

describe('pixels of changed pictures', () => {
  it('are looked at where the figures are the same, and nowhere else', async () => {
    const reader = pool();
    const top = changed();
    const { changes } = await compared(top, { pool: reader });
    const told = changes.map(({ path, pages }) => [path, pages[0].samePixels]);
    assert.deepEqual(told, [
      ['a.tif', true],
      ['b.tif', false],
      ['c.tif', null],
      ['e.tif', null],
    ]);
    const named = ['a.tif', 'a.tif', 'b.tif', 'b.tif'].map(name => path.join(top, name));
    assert.deepEqual(reader.looked.toSorted(), named, 'told by the names that a person knows');
  });

  it('are not looked at again once they are known, in this run or the next', async () => {
    const top = changed();
    const folder = temporaryFolder();
    for (const looks of [4, 0]) {
      const cache = await FactsCache.open(folder, top, 'v');
      const reader = pool();
      const { changes } = await compared(top, { pool: reader, cache });
      assert.deepEqual([changes[0].pages[0].samePixels, changes[1].pages[0].samePixels], [true, false]);
      assert.equal(reader.looked.length, looks);
      await cache.save();
    }
  });

  it('are the same of one content under another name, without a look', async () => {
    const top = repositoryOf({ ...settings, 'a.tif': first(1) });
    git(top, 'mv', 'a.tif', 'b.tif');
    commit(top);
    const reader = pool();
    const { changes } = await compared(top, { pool: reader });
    assert.deepEqual(
      changes.map(({ path, pages }) => [path, pages[0].samePixels, reader.looked]),
      [['b.tif', true, []]],
    );
  });

  it('stay open where nobody can look', async () => {
    const reader = { ...pool(), pixels: async () => null };
    const { changes } = await compared(changed(), { pool: reader });
    assert.deepEqual(
      changes.map(({ pages }) => pages[0].samePixels),
      [null, null, null, null],
    );
  });
});

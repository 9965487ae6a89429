import assert from 'node:assert/strict';
import path from 'node:path';
import { openRepository } from '../../../src/book/git/repository';
import { sizesOf } from '../../../src/book/git/sizes';
import { git, repositoryOf } from '../revisions/support/repository';
import { temporaryFolder } from '../support/folder';

const oidOf = (top: string, name: string) => git(top, 'rev-parse', `HEAD:${name}`).trim();

describe('sizes of contents', () => {
  it('are told by what git calls these, and nothing of what is no file or not there', async () => {
    const top = repositoryOf({ 'a.tif': 'abc', 'of/b.tif': 'x'.repeat(2000), 'none.tif': '' });
    const [a, b, none, folder] = ['a.tif', 'of/b.tif', 'none.tif', 'of'].map(name => oidOf(top, name));
    const sizes = await sizesOf(await openRepository(top), [a, b, none, folder, '1'.repeat(40)]);
    assert.deepEqual(sizes, new Map([[a, 3], [b, 2000], [none, 0]])); // biome-ignore format: pairs
  });

  it('are not told of what a clone without contents lacks, and that is no failure', async () => {
    const top = repositoryOf({ 'a.tif': 'abc' });
    git(top, 'config', 'uploadpack.allowFilter', 'true');
    const clone = path.join(temporaryFolder(), 'clone');
    git(top, 'clone', '--quiet', '--no-checkout', '--filter=blob:none', `file://${top}`, clone);
    assert.deepEqual(await sizesOf(await openRepository(clone), [oidOf(top, 'a.tif')]), new Map());
  });
});

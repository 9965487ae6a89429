import assert from 'node:assert/strict';
import path from 'node:path';
import type { Found } from '../../../src/book/discovery/discover';
import { type Content, contentsOf, differenceOf } from '../../../src/book/shards/contents';
import { git, repositoryOf } from '../revisions/support/repository';
import { temporaryFolder, write } from '../support/folder';

const found = (root: string, ...paths: string[]): Found[] =>
  paths.map(name => ({ path: name, file: path.join(root, name), obstacle: null }));

describe('what the files of a book hold', () => {
  it('is what git calls them where it vouches for them, and their size', async () => {
    const root = repositoryOf({ 'a.tif': 'as it was', 'b.tif': 'as it was too' });
    write(root, { 'b.tif': 'changed', 'c.tif': 'new', 'd.tif': 'announced' });
    git(root, 'add', '-N', 'd.tif');
    const oid = git(root, 'rev-parse', 'HEAD:a.tif').trim();
    const [link] = found(root, 'e.tif');
    const files = [...found(root, 'a.tif', 'b.tif', 'c.tif', 'd.tif', 'gone.tif')];
    files.push({ ...link, obstacle: { reason: 'outside', text: '' } });
    assert.deepEqual(await contentsOf(root, files), [
      [9, oid],
      [7, null],
      [3, null],
      [9, null],
      [null, null],
      [null, null],
    ]);
  });

  it('is their size where there is no repository', async () => {
    const root = temporaryFolder({ 'a.tif': 'alone' });
    assert.deepEqual(await contentsOf(root, found(root, 'a.tif')), [[5, null]]);
  });

  it('differs by size, and by what git calls it where that is known of both', () => {
    const of = (one: Content, other: Content) => differenceOf(one, other);
    assert.equal(of([5, 'a'], [5, 'a']), null);
    assert.equal(of([5, 'a'], [5, null]), null);
    assert.match(of([5, 'a'], [5, 'b'])!, /same size in both, and by git another content/);
    assert.equal(of([5, null], [1, 'a']), 'is 1 byte in one and 5 bytes in the other');
    assert.equal(of([5, null], [null, null]), 'is no file to be read in one and 5 bytes in the other');
  });
});

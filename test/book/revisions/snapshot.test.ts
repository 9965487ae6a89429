import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { openRepository } from '../../../src/book/revisions/repository';
import { commitOf } from '../../../src/book/revisions/revision';
import { isFile, isLink, snapshotOf, snapshotOfIndex } from '../../../src/book/revisions/snapshot';
import { write } from '../support/folder';
import { commit, git, repositoryOf } from './support/repository';

describe('snapshots', () => {
  it('hold the book’s folder alone, by paths from it', async () => {
    const top = repositoryOf({ 'a.tif': 'a', 'sub/b\nc.tif': 'b' }, 'book');
    commit(top, { 'other.tif': 'o' });
    fs.symlinkSync('a.tif', path.join(top, 'book/link.tif'));
    commit(top);
    const book = await openRepository(path.join(top, 'book'));
    const snapshot = await snapshotOf(book, await commitOf(book, 'HEAD'));
    assert.deepEqual([...snapshot.keys()], ['a.tif', 'link.tif', 'sub/b\nc.tif']);
    assert.deepEqual([isFile(snapshot.get('a.tif')!), isLink(snapshot.get('link.tif')!)], [true, true]);
  });

  it('of a commit before the book was begun are empty', async () => {
    const top = repositoryOf({ 'other.tif': 'o' });
    commit(top, { 'book/a.tif': 'a' });
    const book = await openRepository(path.join(top, 'book'));
    assert.equal((await snapshotOf(book, await commitOf(book, 'HEAD~1'))).size, 0);
  });

  it('of the index hold what is staged, not what lies in the folder', async () => {
    const top = repositoryOf({ 'a.tif': 'a' });
    write(top, { 'staged.tif': 's', 'lying.tif': 'l' });
    git(top, 'add', 'staged.tif');
    assert.deepEqual([...(await snapshotOfIndex(await openRepository(top))).keys()], ['a.tif', 'staged.tif']);
  });

  it('of an index in conflict are refused', async () => {
    const top = repositoryOf({ 'a.tif': 'a' });
    git(top, 'checkout', '--quiet', '-b', 'work');
    commit(top, { 'a.tif': 'b' });
    git(top, 'checkout', '--quiet', 'main');
    commit(top, { 'a.tif': 'c' });
    assert.throws(() => git(top, 'merge', 'work'));
    await assert.rejects(snapshotOfIndex(await openRepository(top)), /"a\.tif" is in conflict/);
  });
});

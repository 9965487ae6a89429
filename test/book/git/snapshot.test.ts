import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { changesBetween } from '../../../src/book/git/changes';
import { openRepository } from '../../../src/book/git/repository';
import { commitOf, commitsOf } from '../../../src/book/git/revision';
import {
  isFile,
  isLink,
  type Snapshot,
  snapshotBefore,
  snapshotOf,
  snapshotOfIndex,
} from '../../../src/book/git/snapshot';
import { commit, git, repositoryOf } from '../revisions/support/repository';
import { write } from '../support/folder';

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

  it('of the commit before are told by what changed since, whatever that was', async () => {
    const top = repositoryOf(
      Object.fromEntries(
        ['a', 'b', 'c', 'd', 'e', 'f', 'of/g', 'of/h'].map(name => [`${name}.tif`, name.repeat(300)]),
      ),
      'book',
    );
    const at = (name: string) => path.join(top, 'book', name);
    commit(top, { 'out.tif': 'out'.repeat(300) });
    // a change, a mode, one taken away, one renamed, two that swap names, one in and one out, a link in one's place
    write(top, { 'book/a.tif': 'changed', 'book/new.tif': 'new' });
    fs.chmodSync(at('b.tif'), 0o755);
    fs.rmSync(at('c.tif'));
    fs.renameSync(at('d.tif'), at('d2.tif'));
    fs.renameSync(at('e.tif'), at('between'));
    fs.renameSync(at('f.tif'), at('e.tif'));
    fs.renameSync(at('between'), at('f.tif'));
    fs.renameSync(path.join(top, 'out.tif'), at('in.tif'));
    fs.renameSync(at('of/g.tif'), path.join(top, 'gone.tif'));
    fs.rmSync(at('of/h.tif'));
    fs.symlinkSync('../a.tif', at('of/h.tif'));
    commit(top);
    const book = await openRepository(path.join(top, 'book'));
    const [before, after] = await commitsOf(book, ['HEAD~1', 'HEAD']);
    const { changes } = await changesBetween(book, before, after);
    const told = snapshotBefore(await snapshotOf(book, after), changes);
    const sorted = (snapshot: Snapshot) => [...snapshot].sort(([x], [y]) => (x < y ? -1 : 1));
    assert.deepEqual(sorted(told), sorted(await snapshotOf(book, before)));
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

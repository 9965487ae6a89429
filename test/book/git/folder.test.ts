import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { Blobs } from '../../../src/book/git/blobs';
import { treeOfFolder } from '../../../src/book/git/folder';
import { openRepository } from '../../../src/book/git/repository';
import { snapshotOf } from '../../../src/book/git/snapshot';
import { goingInto } from '../revisions/support/going-into';
import { commit, git, repositoryOf } from '../revisions/support/repository';
import { temporaryFolder, write } from '../support/folder';

const open = (folder: string) => openRepository(folder);

describe('what lies in a folder, as git would hold it', () => {
  it('can be read while it is open, and is gone afterwards', async () => {
    const top = repositoryOf({ 'a.tif': 'a', 'b.tif': 'b' }, 'book');
    write(top, { 'book/b.tif': 'changed', 'book/c.tif': 'new' });
    const own = temporaryFolder();
    const folder = await goingInto(own, async () => treeOfFolder(await open(path.join(top, 'book'))));
    assert.equal(fs.readdirSync(own).length, 1);
    const snapshot = await snapshotOf(folder.repository, folder.tree);
    assert.deepEqual([...snapshot.keys()], ['a.tif', 'b.tif', 'c.tif']);
    const blobs = new Blobs(folder.repository);
    try {
      for (const [name, text] of [
        ['a.tif', 'a'],
        ['b.tif', 'changed'],
        ['c.tif', 'new'],
      ])
        assert.equal(String(await blobs.small(snapshot.get(name)!.oid, 100, name)), text);
    } finally {
      blobs.close();
    }
    await folder.close();
    assert.deepEqual(fs.readdirSync(own), []);
    assert.throws(() => git(top, 'cat-file', '-e', snapshot.get('c.tif')!.oid));
  });

  it('is found in a repository that has staged nothing yet', async () => {
    const top = temporaryFolder({ 'a.tif': 'a' });
    git(top, 'init', '--quiet');
    const folder = await treeOfFolder(await open(top));
    assert.deepEqual([...(await snapshotOf(folder.repository, folder.tree)).keys()], ['a.tif']);
    await folder.close();
  });

  it('is found without running a filter of the repository’s settings', async () => {
    const mark = path.join(temporaryFolder(), 'was-run');
    const top = repositoryOf({ '.gitattributes': '*.tif filter=trap\n', 'a.tif': 'a' });
    for (const what of ['clean', 'process']) git(top, 'config', `filter.trap.${what}`, `touch ${mark}; cat`);
    git(top, 'config', 'filter.trap.required', 'true');
    write(top, { 'a.tif': 'changed' });
    const folder = await treeOfFolder(await open(top));
    assert.ok(!fs.existsSync(mark));
    await folder.close();
  });

  it('takes the place of what is in conflict in the folder, and is told where it is elsewhere', async () => {
    const top = repositoryOf({ 'book/a.tif': 'a', 'note.txt': 'a' });
    git(top, 'checkout', '--quiet', '-b', 'work');
    commit(top, { 'note.txt': 'work' });
    git(top, 'checkout', '--quiet', 'main');
    commit(top, { 'note.txt': 'main' });
    assert.throws(() => git(top, 'merge', '--quiet', 'work'));
    await assert.rejects(
      treeOfFolder(await open(path.join(top, 'book'))),
      /middle of a merge: resolve it first/,
    );
    await (await treeOfFolder(await open(top))).close();
  });

  it('is not half known: what git cannot take in is told', async () => {
    const top = repositoryOf({ 'a.tif': 'a' });
    write(top, { 'b.tif': 'new', 'inner/c.tif': 'c' });
    git(`${top}/inner`, 'init', '--quiet');
    await assert.rejects(
      treeOfFolder(await open(top)),
      /^GitError: git cannot say what lies in the folder: .*inner/,
    );
  });

  it('has no past where the repository around it ignores it: the way to one is told', async () => {
    const top = repositoryOf({ '.gitignore': 'book/' });
    write(top, { 'book/a.tif': 'a' });
    await assert.rejects(treeOfFolder(await open(path.join(top, 'book'))), /ignores it.*"git init"/);
  });
});

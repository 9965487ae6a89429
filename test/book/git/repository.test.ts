import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { askGit } from '../../../src/book/git/git';
import { openRepository } from '../../../src/book/git/repository';
import { git, repositoryOf } from '../revisions/support/repository';
import { temporaryFolder } from '../support/folder';

describe('the repository of a book', () => {
  it('is found from a folder in it, with the store that all its worktrees share', async () => {
    const top = repositoryOf({ 'a.txt': '' }, 'books/one');
    const book = await openRepository(path.join(top, 'books/one'));
    assert.deepEqual(
      [book.commonDir, book.shallow, book.hash, book.env],
      [path.join(top, '.git'), false, 'sha1', {}],
    );
    const other = path.join(temporaryFolder(), 'tree');
    git(top, 'worktree', 'add', '--quiet', other);
    assert.equal((await openRepository(path.join(other, 'books/one'))).commonDir, path.join(top, '.git'));
  });

  it('knows a shallow clone, and names of the longer kind', async () => {
    const top = repositoryOf({ a: '' });
    const clone = path.join(temporaryFolder(), 'clone');
    git(top, 'clone', '--quiet', '--depth=1', `file://${top}`, clone);
    assert.equal((await openRepository(clone)).shallow, true);
    const long = temporaryFolder();
    git(long, 'init', '--quiet', '--object-format=sha256');
    assert.equal((await openRepository(long)).hash, 'sha256');
  });

  it('takes the index that a hook is told, if it is this repository’s', async () => {
    const top = repositoryOf({ a: '' });
    const index = path.join(top, '.git/next-index-1.lock');
    fs.copyFileSync(path.join(top, '.git/index'), index);
    process.env.GIT_INDEX_FILE = index;
    process.env.GIT_DIR = path.join(temporaryFolder(), 'elsewhere');
    try {
      assert.deepEqual((await openRepository(top)).env, { GIT_INDEX_FILE: index });
      const other = repositoryOf({ b: '' });
      assert.deepEqual((await openRepository(other)).env, {});
      assert.equal((await askGit(other, ['ls-files'])).toString(), 'b\n');
    } finally {
      delete process.env.GIT_INDEX_FILE;
      delete process.env.GIT_DIR;
    }
  });

  it('is missed in words', async () => {
    await assert.rejects(
      openRepository(temporaryFolder()),
      /is in no git repository, so there are no revisions/,
    );
    await assert.rejects(
      openRepository(path.join(repositoryOf({ a: '' }), '.git')),
      /the inside of a git repository/,
    );
  });
});

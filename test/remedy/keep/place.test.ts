import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { keepOf, keepsAbove, openKeep } from '../../../src/remedy/keep/place';
import { temporaryFolder } from '../../book/support/folder';

const git = (cwd: string, ...args: string[]) =>
  execFileSync('git', ['-c', 'user.name=T', '-c', 'user.email=t@example.com', ...args], {
    cwd,
    encoding: 'utf8',
  });

describe('place of originals', () => {
  it('is the book’s own hidden folder outside of a repository, and ignores itself', async () => {
    const root = temporaryFolder();
    const keep = await openKeep(await keepOf(root));
    assert.deepEqual([keep.folder, keep.top], [path.join(root, '.evengrey'), root]);
    git(root, 'init', '-q');
    assert.equal(git(root, 'status', '--short'), '');
  });

  it('is the one that is there above', async () => {
    const root = temporaryFolder({ 'book/plates/a.txt': '' });
    await openKeep(await keepOf(path.join(root, 'book')));
    const keep = await keepOf(path.join(root, 'book/plates'));
    assert.deepEqual([keep.folder, keep.top], [path.join(root, 'book/.evengrey'), path.join(root, 'book')]);
  });

  it('is git’s own folder in a repository, which no clean-up takes and no commit carries', async () => {
    const root = temporaryFolder({ 'book/a.txt': '' });
    git(root, 'init', '-q');
    const keep = await openKeep(await keepOf(path.join(root, 'book')));
    assert.deepEqual([keep.folder, keep.top], [path.join(root, '.git/evengrey'), root]);
    fs.writeFileSync(path.join(keep.folder, 'originals/x'), 'kept');
    git(root, 'clean', '-fdxq');
    git(root, 'gc', '-q');
    assert.equal(fs.readFileSync(path.join(keep.folder, 'originals/x'), 'utf8'), 'kept');
  });

  it('is shared by the working trees of a repository', async () => {
    const root = temporaryFolder({ 'main/a.txt': '' });
    const main = path.join(root, 'main');
    git(main, 'init', '-q');
    git(main, 'add', '.');
    git(main, 'commit', '-qm', 'x');
    git(main, 'worktree', 'add', '-q', '../other');
    const keep = await keepOf(path.join(root, 'other'));
    assert.deepEqual([keep.folder, keep.top], [path.join(main, '.git/evengrey'), path.join(root, 'other')]);
  });

  it('is no folder that only calls itself a repository', async () => {
    const elsewhere = temporaryFolder();
    const root = temporaryFolder({ '.git': `gitdir: ${elsewhere}\n` });
    assert.equal((await keepOf(root)).folder, path.join(root, '.evengrey'));
  });

  it('is refused where a link stands in its place', async () => {
    const elsewhere = temporaryFolder();
    const root = temporaryFolder();
    fs.symlinkSync(elsewhere, path.join(root, '.evengrey'));
    await assert.rejects(openKeep(await keepOf(root)), /is a link/);
    assert.deepEqual(fs.readdirSync(elsewhere), []);
  });

  it('is looked for in every place where it can have been before', async () => {
    const root = temporaryFolder({ 'book/a.txt': '' });
    const book = path.join(root, 'book');
    await openKeep(await keepOf(book));
    git(root, 'init', '-q');
    assert.deepEqual(
      (await keepsAbove(book)).map(({ folder }) => path.relative(root, folder)),
      ['book/.evengrey', '.git/evengrey'],
    );
    assert.equal((await keepOf(book)).folder, path.join(root, '.git/evengrey'));
  });
});

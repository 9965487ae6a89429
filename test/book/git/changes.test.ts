import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { type Change, changesBetween, changesStaged } from '../../../src/book/git/changes';
import { openRepository } from '../../../src/book/git/repository';
import { commitOf } from '../../../src/book/git/revision';
import { commit, git, repositoryOf } from '../revisions/support/repository';
import { temporaryFolder, write } from '../support/folder';

/** Half of it is alike in two such texts of different seeds. */
const text = (seed: number) =>
  Array.from({ length: 60 }, (_, i) => (i % 3 ? `line ${i}` : `line ${i} of ${seed}`)).join('\n');

const told = ({ path, from, before, after }: Change) =>
  `${from === null ? '' : `${from} -> `}${path} ${before?.mode ?? '-'} ${after?.mode ?? '-'}${before?.oid === after?.oid ? ' same' : ''}`;

async function between(top: string, base: string, head: string, folder = '') {
  const repository = await openRepository(path.join(top, folder));
  const { changes, renamesFollowed } = await changesBetween(
    repository,
    await commitOf(repository, base),
    await commitOf(repository, head),
  );
  return { told: changes.map(told), renamesFollowed };
}

describe('changes between revisions', () => {
  it('tell what was added, changed, deleted and renamed, with its mode, in a book that is a part of its repository', async () => {
    const top = repositoryOf(
      { 'a.tif': text(1), 'b.tif': 'b', 'c.tif': 'c', 'd.tif': text(4), 'e.tif': 'e' },
      'book',
    );
    write(top, { 'elsewhere.tif': 'x' });
    fs.renameSync(path.join(top, 'book/a.tif'), path.join(top, 'book/new name\n%.tif'));
    fs.rmSync(path.join(top, 'book/b.tif'));
    fs.chmodSync(path.join(top, 'book/c.tif'), 0o755);
    fs.renameSync(path.join(top, 'book/d.tif'), path.join(top, 'book/moved.tif'));
    write(top, { 'book/moved.tif': text(5) });
    fs.rmSync(path.join(top, 'book/e.tif'));
    fs.symlinkSync('c.tif', path.join(top, 'book/e.tif'));
    commit(top, { 'book/sub/ä.tif': 'new' });
    assert.deepEqual((await between(top, 'HEAD~1', 'HEAD', 'book')).told, [
      'b.tif 100644 -',
      'c.tif 100644 100755 same',
      'e.tif 100644 120000',
      'd.tif -> moved.tif 100644 100644',
      'a.tif -> new name\n%.tif 100644 100644 same',
      'sub/ä.tif - 100644',
    ]);
  });

  it('tell a submodule', async () => {
    const inner = repositoryOf({ 'p.tif': 'p' });
    const top = repositoryOf({ 'a.tif': 'a' });
    git(top, 'submodule', '--quiet', 'add', inner, 'inner');
    commit(top);
    const { told: lines } = await between(top, 'HEAD~1', 'HEAD');
    assert.ok(lines.includes('inner - 160000'), lines.join('; '));
  });

  it('follow only exact renames where contents are missing, and say so', async () => {
    const top = repositoryOf({ 'a.tif': text(1), 'b.tif': text(2) });
    git(top, 'config', 'uploadpack.allowFilter', 'true');
    fs.renameSync(path.join(top, 'a.tif'), path.join(top, 'x.tif'));
    fs.renameSync(path.join(top, 'b.tif'), path.join(top, 'y.tif'));
    commit(top, { 'y.tif': text(3) });
    const clone = path.join(temporaryFolder(), 'clone');
    git(top, 'clone', '--quiet', '--no-checkout', '--filter=blob:none', `file://${top}`, clone);
    assert.deepEqual(await between(clone, 'HEAD~1', 'HEAD'), {
      told: ['b.tif 100644 -', 'a.tif -> x.tif 100644 100644 same', 'y.tif - 100644'],
      renamesFollowed: false,
    });
  });

  it('are those of the index on top of a commit, or of nothing', async () => {
    const top = repositoryOf({ 'a.tif': 'a' });
    write(top, { 'a.tif': 'b', 'new.tif': 'n' });
    git(top, 'add', 'new.tif');
    const repository = await openRepository(top);
    const staged = await changesStaged(repository, await commitOf(repository, 'HEAD'));
    assert.deepEqual(staged.changes.map(told), ['new.tif - 100644']);
    const all = await changesStaged(repository, null);
    assert.deepEqual(all.changes.map(told), ['a.tif - 100644', 'new.tif - 100644']);
  });
});

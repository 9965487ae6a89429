import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { openRepository } from '../../../src/book/git/repository';
import { settledFiles } from '../../../src/book/git/worktree';
import { git, repositoryOf } from '../revisions/support/repository';
import { temporaryFolder, write } from '../support/folder';

describe('files that hold what git calls so', () => {
  it('are those unchanged since they were staged', async () => {
    const top = repositoryOf({ 'a.tif': 'a', 'b.tif': 'b', 'c.tif': 'c' }, 'book');
    fs.symlinkSync('a.tif', path.join(top, 'book/link.tif'));
    git(top, 'add', '--all');
    write(top, { 'book/b.tif': 'changed', 'book/new.tif': 'n' });
    fs.rmSync(path.join(top, 'book/c.tif'));
    const settled = await settledFiles(await openRepository(path.join(top, 'book')));
    assert.deepEqual([...settled], [['a.tif', git(top, 'rev-parse', ':book/a.tif').trim()]]);
  });

  it('are found without running a filter of the repository’s settings', async () => {
    const mark = path.join(temporaryFolder(), 'was-run');
    const top = repositoryOf({ '.gitattributes': '*.tif filter=trap\n', 'a.tif': 'a' });
    for (const what of ['clean', 'process']) git(top, 'config', `filter.trap.${what}`, `touch ${mark}; cat`);
    git(top, 'config', 'filter.trap.required', 'true');
    // of the same size and within the clock's tick of the index: git has to look into it
    write(top, { 'a.tif': 'b' });
    fs.utimesSync(path.join(top, 'a.tif'), new Date(), new Date());
    await settledFiles(await openRepository(top));
    assert.ok(!fs.existsSync(mark));
  });
});

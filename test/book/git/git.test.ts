import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { askGit, GitError, pieces, runGit } from '../../../src/book/git/git';
import { git, repositoryOf } from '../revisions/support/repository';
import { temporaryFolder } from '../support/folder';

describe('running git', () => {
  it('starts no program that the repository’s settings name', async () => {
    const top = repositoryOf({ 'a.txt': 'a' });
    const trap = path.join(temporaryFolder(), 'trap');
    const mark = `${trap}-was-run`;
    fs.writeFileSync(trap, `#!/bin/sh\ntouch ${mark}\nexit 1\n`, { mode: 0o755 });
    git(top, 'config', 'core.fsmonitor', trap);
    git(top, 'config', 'core.pager', trap);
    git(top, 'config', 'diff.external', trap);
    fs.mkdirSync(path.join(top, '.git/hooks'), { recursive: true });
    fs.copyFileSync(trap, path.join(top, '.git/hooks/post-index-change'));
    for (const args of [
      ['ls-files', '--stage'],
      ['diff-files', '--raw'],
      ['log', '-1', '--raw'],
    ])
      await askGit(top, args);
    assert.ok(!fs.existsSync(mark));
  });

  it('is not started in a folder that may hold a program of that name', async () => {
    const top = repositoryOf({ git: '#!/bin/sh\necho trapped\n' });
    fs.chmodSync(path.join(top, 'git'), 0o755);
    const before = process.env.PATH;
    // as systems do it that look into the folder itself first
    process.env.PATH = `.:${before}`;
    try {
      assert.equal((await askGit(top, ['rev-parse', '--is-inside-work-tree'])).toString(), 'true\n');
    } finally {
      process.env.PATH = before;
    }
  });

  it('says in words what went wrong', async () => {
    const top = repositoryOf({ a: '' });
    await assert.rejects(
      askGit(top, ['cat-file', 'blob', 'nothing']),
      (error: Error) =>
        error instanceof GitError && /^git cat-file failed: Not a valid object name/.test(error.message),
    );
  });

  it('says so where there is no git', async () => {
    const before = process.env.PATH;
    process.env.PATH = temporaryFolder();
    try {
      await assert.rejects(runGit('/', ['version']), /git is not installed, or not on the PATH/);
    } finally {
      process.env.PATH = before;
    }
  });

  it('ends with the signal', async () => {
    const controller = new AbortController();
    const asked = runGit(repositoryOf({ a: '' }), ['cat-file', '--batch', '--batch-all-objects'], {
      signal: controller.signal,
    });
    controller.abort(new Error('enough'));
    await assert.rejects(asked, /enough/);
  });

  it('takes answers apart at zero bytes, line breaks in names kept', () =>
    assert.deepEqual(pieces(Buffer.from('a\nb\0c d\0')), ['a\nb', 'c d']));
});

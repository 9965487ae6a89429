import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import { parse } from 'yaml';
import { commit, git } from '../../book/revisions/support/repository';
import { write } from '../../book/support/folder';
import { bash, installed, workspace } from './support';

const [hook] = parse(fs.readFileSync('.pre-commit-hooks.yaml', 'utf8'));

describe('the pre-commit hook', () => {
  it('runs at every commit, as the files that one takes away or renames match no pattern', () => {
    assert.equal(hook.always_run, true);
    for (const filter of ['files', 'types', 'types_or', 'exclude', 'exclude_types'])
      assert.equal(hook[filter], undefined, `${filter} says nothing where it always runs`);
  });

  it('fails a commit that takes away or renames a picture which a layout places, and with --staged no other', () => {
    const root = workspace(false);
    const run = (...more: string[]) =>
      bash(`npx --no-install ${[hook.entry, 'book', ...more].join(' ')}`, root, {
        PATH: `${installed()}/bin:${process.env.PATH}`,
      }).status;
    const both = () => [run(), run('--staged')];
    commit(root, { 'book/book.md': '![](01.tif) ![](02.tif)' });
    assert.deepEqual(both(), [0, 0]);
    git(root, 'mv', 'book/02.tif', 'book/03.tif');
    assert.deepEqual(both(), [1, 1]);
    git(root, 'rm', '--quiet', '--force', 'book/03.tif');
    assert.deepEqual(both(), [1, 1]);
    commit(root, { 'words.txt': 'a book that is faulty, for whatever reason' });
    write(root, { 'words.txt': 'other words' });
    git(root, 'add', '--all');
    assert.deepEqual(both(), [1, 0], 'and nothing of the book is staged');
  });

  it('can be installed by pre-commit, which takes what "npm pack" prints for a file name', () => {
    const { stdout } = spawnSync('npm', ['config', 'get', 'foreground-scripts'], { encoding: 'utf8' });
    assert.equal(stdout.trim(), 'false');
  });

  it('checks the whole book by a command that is installed with the package', () => {
    assert.deepEqual([hook.language, hook.pass_filenames], ['node', false]);
    const [program, verb] = hook.entry.split(' ');
    const { bin } = JSON.parse(fs.readFileSync('package.json', 'utf8'));
    assert.equal(bin[program], 'dist/cli.js');
    const run = (faulty: boolean) =>
      bash(`npx --no-install evengrey ${verb} book`, workspace(faulty), {
        PATH: `${installed()}/bin:${process.env.PATH}`,
      });
    assert.deepEqual([run(false).status, run(true).status], [0, 1]);
  });
});

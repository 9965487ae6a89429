import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import fs from 'node:fs';
import { parse } from 'yaml';
import { extensions } from '../../../src/book/discovery/extensions';
import { layoutExtensions } from '../../../src/layout/kinds';
import { bash, installed, workspace } from './support';

const [hook] = parse(fs.readFileSync('.pre-commit-hooks.yaml', 'utf8'));

describe('the pre-commit hook', () => {
  it('runs when a picture of any kind or what says how it is printed changes', () => {
    assert.match(hook.files, /^\(\?i\)/);
    const files = new RegExp(hook.files.slice(4), 'i');
    for (const extension of extensions) assert.match(`a b/1.${extension.toUpperCase()}`, files);
    for (const name of ['evengrey.json', 'house/x.json', 'press.icc']) assert.match(name, files);
    for (const extension of layoutExtensions) assert.match(`book/1.${extension}`, files);
    for (const name of ['.gitignore', 'plates/.evengreyignore']) assert.match(name, files);
    for (const name of ['a.txt', 'jpg', 'a.jpgx', 'a.mdx']) assert.doesNotMatch(name, files);
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

import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { parse } from 'yaml';
import { bundledPackages } from '../../../scripts/package/bundled';
import { temporaryFolder } from '../../book/support/folder';
import { readCommand } from '../../report/github/support';
import { sarifErrors } from '../../report/sarif/support';
import { dist } from '../support/run';
import { bash, installed, workspace } from './support';

interface Action {
  inputs: Record<string, { description: string; default: string }>;
  runs: { using: string; steps: { name: string; shell: string; run: string; uses?: string; env: object }[] };
}

const action: Action = parse(fs.readFileSync('action.yml', 'utf8'));

/** Runs every step as a runner does: `env` filled in from the inputs, `bash -eo pipefail`, the first failure ends it. */
function run(cwd: string, inputs: Record<string, string> = {}) {
  const summary = path.join(temporaryFolder({ summary: '' }), 'summary');
  const values: Record<string, string> = { 'github.action_path': installed() };
  for (const [name, { default: value }] of Object.entries(action.inputs))
    values[`inputs.${name}`] = inputs[name] ?? value;
  const temporary = temporaryFolder();
  let ran = { status: 0 as number | null, stdout: '', stderr: '' };
  for (const step of action.runs.steps) {
    const env = Object.entries(step.env).map(([name, value]) => [
      name,
      value.replace(/\$\{\{ (.*?) \}\}/g, (_: string, key: string) => values[key]),
    ]);
    ran = bash(step.run, cwd, {
      ...Object.fromEntries(env),
      GITHUB_STEP_SUMMARY: summary,
      TMPDIR: temporary,
    });
    if (ran.status !== 0) break;
  }
  assert.deepEqual(fs.readdirSync(temporary), [], 'it takes away what it makes');
  return { ...ran, summary: fs.readFileSync(summary, 'utf8') };
}

const evengreyIn = (cwd: string, ...args: string[]) =>
  bash(`node ${dist}/cli.js ${args.join(' ')}`, cwd).stderr;

describe('the action', () => {
  it('is made of steps of its own, and lets no input into a script but by the environment', () => {
    assert.equal(action.runs.using, 'composite');
    for (const { uses, run, shell } of action.runs.steps) {
      assert.equal(uses, undefined);
      assert.equal(shell, 'bash');
      assert.doesNotMatch(run, /\$\{\{/);
    }
    for (const { description } of Object.values(action.inputs)) assert.match(description, /\.$/);
  });

  it('installs every package that the build bundles, and none that only tests', () => {
    const folder = temporaryFolder();
    const metafile = path.join(folder, 'meta.json');
    execFileSync(process.execPath, [
      'build.mjs',
      '--dist',
      path.join(folder, 'dist'),
      '--metafile',
      metafile,
    ]);
    const lean = `import('./scripts/action/packages.mjs').then(({ leanManifest }) =>
      console.log(JSON.stringify(leanManifest(require('./package.json')))));`;
    const { devDependencies: left } = JSON.parse(
      execFileSync(process.execPath, ['-e', lean], { encoding: 'utf8' }),
    );
    const { devDependencies: all } = JSON.parse(fs.readFileSync('package.json', 'utf8'));
    const bundled = bundledPackages(JSON.parse(fs.readFileSync(metafile, 'utf8')))
      .map(name => name.replace(/^.*node_modules\//, ''))
      .filter(name => name in all);
    const tools = ['ajv', 'assemblyscript', 'esbuild'];
    assert.deepEqual(Object.keys(left).sort(), [...new Set([...bundled, ...tools])].sort());
  });

  it('passes a sound book, and writes the summary', () => {
    const { status, stdout, summary } = run(workspace(false), { paths: 'book' });
    assert.equal(status, 0);
    assert.match(stdout, /\n2 pictures: 0 errors, /);
    assert.match(summary, /^### Evengrey, book: Nothing in the files stands against printing/);
  });

  it('fails a faulty book, annotates it from the root of the repository, and writes SARIF and the summary all the same', () => {
    const root = workspace(true);
    const { status, stdout, summary } = run(root, { paths: 'book', sarif: 'evengrey.sarif' });
    assert.equal(status, 1);
    assert.equal(readCommand(stdout.split('\n')[0]).properties.file, 'book/02.tif');
    assert.match(summary, /^### Evengrey, book: 1 of 2 pictures wants attention/);
    assert.equal(sarifErrors(JSON.parse(fs.readFileSync(path.join(root, 'evengrey.sarif'), 'utf8'))), '');
  });

  it('takes several paths, a limit of warnings, and no summary', () => {
    const root = workspace(false);
    const { status, stdout, summary } = run(root, {
      paths: 'book/01.tif\n\nbook/02.tif\n',
      'max-warnings': '0',
      summary: 'false',
    });
    assert.deepEqual([status, summary], [0, '']);
    assert.match(stdout, /\n2 pictures: /);
  });

  it('ends with code 2 where nothing was judged, and says why, once, wherever it says anything', () => {
    const root = workspace(false);
    const { status, stdout, stderr, summary } = run(root, { paths: '--format', sarif: 'evengrey.sarif' });
    assert.equal(status, 2);
    assert.equal(stderr.match(/There is no file or folder "--format"/g)?.length, 1);
    assert.match(
      stdout,
      /^::error title=Evengrey::There is no file or folder "--format"[^\n]*\nNothing was checked\.\n$/,
    );
    assert.match(summary, /^### Evengrey: Nothing was checked\n[\s\S]*There is no file or folder "--format"/);
    const log = JSON.parse(fs.readFileSync(path.join(root, 'evengrey.sarif'), 'utf8'));
    assert.equal(sarifErrors(log), '');
    assert.equal(log.runs[0].invocations[0].executionSuccessful, false);
  });

  it('ends with code 2 where its default is a folder of books, and names them', () => {
    const { status, stdout, summary } = run(workspace(false));
    assert.equal(status, 2);
    assert.match(
      stdout,
      /^::error title=Evengrey::"\." has no evengrey\.json, and a book lies below it \(settings in "book"\)/,
    );
    assert.match(summary, /^### Evengrey: Nothing was checked\n/);
  });

  it('says why where the SARIF or the summary cannot be written', () => {
    for (const sarif of ['no-folder/evengrey.sarif', 'book/01.tif']) {
      const { status, stdout, stderr, summary } = run(workspace(false), { paths: 'book', sarif });
      assert.equal(status, 2);
      assert.match(stderr, /There is no folder "no-folder"|is the name of a picture/);
      assert.match(stdout, /\n::error title=Evengrey::[^\n]*"(?:no-folder|book\/01\.tif)"/);
      assert.match(summary, /^### Evengrey, book: Nothing in the files stands against printing/);
    }
    const { status, stdout } = run(workspace(false), { paths: 'book', compare: 'nowhere' });
    assert.equal(status, 2);
    assert.match(stdout, /\n::error title=Evengrey::There is no revision "nowhere" here/);
  });

  it('takes no other word for true or false', () => {
    for (const [name, word] of [
      ['show-waived', 'True'],
      ['summary', 'yes'],
    ]) {
      const { status, stdout, summary } = run(workspace(false), { paths: 'book', [name]: word });
      assert.deepEqual([status, summary], [2, '']);
      assert.equal(
        stdout,
        `::error title=Evengrey::The input ${name} is neither true nor false. Write it small, and nothing else.\n`,
      );
    }
  });

  it('takes paths with blanks around them, waivers, and a revision to compare with', () => {
    const root = workspace(true);
    const waived = evengreyIn(root, 'check', 'book', '--waive', '--waivers', 'w.json');
    assert.match(waived, /What was not read cannot be waived: 02\.tif/);
    const { stdout, summary, status } = run(root, {
      paths: '  book  \r\n',
      waivers: 'w.json',
      'show-waived': 'true',
      compare: 'origin/main',
    });
    assert.equal(status, 1);
    assert.match(stdout, /\n2 pictures: 1 error, /);
    assert.match(summary, /### Evengrey, book: 1 of 2 pictures wants attention[\s\S]*### Evengrey, book: /);
  });
});

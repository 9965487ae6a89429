import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { parse } from 'junit2json';
import { commit, repositoryOf } from '../book/revisions/support/repository';
import { temporaryFolder, write } from '../book/support/folder';
import { readCommand } from '../report/github/support';
import { sarifErrors } from '../report/sarif/support';
import { evenBook, pictures } from './support/book';
import { evengrey } from './support/run';

const broken = { 'evengrey.json': '{\n  "proces": "offset-coated"\n}' };

describe('a check that cannot be made', () => {
  it('says so at its place in the formats of services', async () => {
    const root = evenBook();
    write(root, broken);
    const run = async (format: string) => {
      const ran = await evengrey(['check', '--format', format], { cwd: root });
      assert.equal(ran.code, 2);
      assert.match(ran.stderr, /evengrey\.json:2:3: /);
      return ran.stdout;
    };
    const { name, properties, data } = readCommand((await run('github')).split('\n')[0]);
    assert.deepEqual([name, properties.file, properties.line], ['error', 'evengrey.json', '2']);
    assert.match(data, /proces/);
    const sarif = JSON.parse(await run('sarif'));
    assert.equal(sarifErrors(sarif), '');
    assert.equal(sarif.runs[0].invocations[0].executionSuccessful, false);
    assert.match(await run('markdown'), /^### Evengrey: Nothing was checked\n[\s\S]*`evengrey\.json:2:3`/);
    assert.equal(((await parse(await run('junit'))) as { errors: number }).errors, 1);
    assert.equal(await run('text'), '');
    assert.equal(await run('json'), '');
  });

  it('leaves no older result behind that a service would publish', async () => {
    const root = evenBook();
    const results = {
      junit: 'r.xml',
      sarif: 'r.sarif',
      markdown: 'r.md',
      text: 'r.txt',
      json: 'r.json',
      html: 'r.html',
    };
    const check = (format: string, output: string) =>
      evengrey(['check', '--format', format, '--output', output], { cwd: root });
    for (const [format, output] of Object.entries(results))
      assert.equal((await check(format, output)).code, 0);
    write(root, broken);
    for (const [format, output] of Object.entries(results)) {
      assert.equal((await check(format, output)).code, 2);
      const file = path.join(root, output);
      if (format === 'json' || format === 'html') assert.equal(fs.existsSync(file), false, format);
      else assert.match(fs.readFileSync(file, 'utf8'), /proces/, format);
    }
  });

  it('says so of a comparison too, and leaves no older one behind', async () => {
    const settings = { 'evengrey.json': '{ "process": "offset-coated" }' };
    const root = repositoryOf({ ...settings, 'a.tif': pictures.neutral(1), 'b.tif': pictures.neutral(2) });
    const compare = (format: string, ...more: string[]) =>
      evengrey(['compare', 'HEAD', '--format', format, ...more], { cwd: root });
    const results = { markdown: 'r.md', text: 'r.txt', github: 'r.log', json: 'r.json', html: 'r.html' };
    for (const [format, output] of Object.entries(results))
      assert.equal((await compare(format, '--output', output)).code, 0);
    commit(root, broken);
    for (const [format, output] of Object.entries(results)) {
      assert.equal((await compare(format, '--output', output)).code, 2);
      const file = path.join(root, output);
      if (format === 'json' || format === 'html') assert.equal(fs.existsSync(file), false, format);
      else
        assert.match(
          fs.readFileSync(file, 'utf8'),
          /Nothing was compared[\s\S]*proces|proces[\s\S]*Nothing was compared/,
          format,
        );
    }
    const { name, properties } = readCommand((await compare('github')).stdout.split('\n')[0]);
    assert.deepEqual([name, properties.file, properties.line], ['error', 'evengrey.json', '2']);
  });

  it('takes nothing away and writes over nothing that is not its own', async () => {
    const root = evenBook();
    const works = {
      'data.json': '{"readings": []}',
      'mine.json': '{ "settings": { "mine": 1 } }',
      'their.json': '{\n  "schema": "https://example.org/readings",\n  "book": []\n}',
      'page.html': '<img src="plates/01.tif">',
      'book.md': '# Mine',
    };
    write(root, { ...broken, ...works });
    for (const [name, text] of Object.entries(works)) {
      const format = name.endsWith('.md') ? 'markdown' : path.extname(name).slice(1);
      assert.equal((await evengrey(['check', '--format', format, '--output', name], { cwd: root })).code, 2);
      assert.equal(fs.readFileSync(path.join(root, name), 'utf8'), text);
    }
  });

  it('takes an older result away where a link leads to it, and leaves the link', async () => {
    const root = evenBook();
    write(root, { 'out/.keep': '' });
    fs.symlinkSync('out/report.json', path.join(root, 'latest.json'));
    const check = () => evengrey(['check', '--format', 'json', '--output', 'latest.json'], { cwd: root });
    fs.writeFileSync(path.join(root, 'out/report.json'), '');
    assert.equal((await check()).code, 0);
    assert.ok(fs.statSync(path.join(root, 'out/report.json')).size > 0);
    write(root, broken);
    assert.equal((await check()).code, 2);
    assert.equal(fs.existsSync(path.join(root, 'out/report.json')), false);
    assert.equal(fs.readlinkSync(path.join(root, 'latest.json')), 'out/report.json');
  });

  it('is in error where a folder holds no picture', async () => {
    const root = temporaryFolder({ 'a.txt': 'nothing' });
    const github = await evengrey(['check', '--format', 'github'], { cwd: root });
    assert.equal(github.code, 2);
    assert.match(github.stdout, /^::error title=Evengrey::"\." holds no picture of the book/);
    const junit = await evengrey(['check', '--format', 'junit'], { cwd: root });
    const { tests, errors } = (await parse(junit.stdout)) as { tests: number; errors: number };
    assert.deepEqual([tests, errors], [1, 1]);
  });
});

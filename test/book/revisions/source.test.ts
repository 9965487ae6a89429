import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { Blobs } from '../../../src/book/git/blobs';
import { openRepository } from '../../../src/book/git/repository';
import { commitOf } from '../../../src/book/git/revision';
import { snapshotOf } from '../../../src/book/git/snapshot';
import { filesOf } from '../../../src/book/revisions/source';
import { loadSettings } from '../../../src/book/settings/load';
import { commit, type Files, repositoryOf } from './support/repository';

/** Settings of the commit before the last, whatever lies in the folder now. */
async function settingsBefore(files: Files, links: Record<string, string> = {}, folder = '') {
  const top = repositoryOf({}, folder);
  for (const [name, target] of Object.entries(links)) fs.symlinkSync(target, path.join(top, folder, name));
  commit(
    top,
    Object.fromEntries(Object.entries(files).map(([name, text]) => [path.posix.join(folder, name), text])),
  );
  // also a link: nothing may be written through it
  for (const name of [...Object.keys(files), ...Object.keys(links)]) fs.rmSync(path.join(top, folder, name));
  commit(top, { [path.posix.join(folder, 'evengrey.json')]: '{ "process": "inkjet" }' });
  const root = path.join(top, folder);
  const repository = await openRepository(root);
  const snapshot = await snapshotOf(repository, await commitOf(repository, 'HEAD~1'));
  const blobs = new Blobs({ root, env: {} });
  const { settings, problems } = await loadSettings(root, { source: filesOf(root, snapshot, blobs) });
  blobs.close();
  return { settings, problems: problems.map(({ file, line, message }) => `${file}:${line}: ${message}`) };
}

describe('settings of a revision', () => {
  it('are read from it, with the house files and records that they name', async () => {
    const record = JSON.stringify({
      record: 1,
      process: 'silver-halide',
      date: '2026-03-01',
      readings: [{ encoding: 'rgb-neutral', orders: 2, greys: [{ L: 50, a: 3, b: 1 }] }],
    });
    const { settings, problems } = await settingsBefore(
      {
        'evengrey.json': '{ "house": "house/north.json" }',
        'house/north.json': '{ "process": "silver-halide", "record": "record.json" }',
        'house/record.json': record,
      },
      {},
      'books/one',
    );
    assert.deepEqual(problems, []);
    assert.equal(settings?.targets[0].process, 'silver-halide');
    assert.equal(settings?.targets[0].record, 'house/record.json');
    assert.equal(settings?.targets[0].printRecord?.date, '2026-03-01');
  });

  it('are none where it has none', async () => {
    const { settings, problems } = await settingsBefore({ 'a.txt': '' });
    assert.deepEqual([settings?.targets, problems], [[], []]);
  });

  it('may be a link inside the book, and no other', async () => {
    const { settings } = await settingsBefore(
      { 'shared.json': '{ "process": "dry-toner" }' },
      { 'evengrey.json': 'shared.json' },
    );
    assert.equal(settings?.targets[0].process, 'dry-toner');
    const outside = await settingsBefore({}, { 'evengrey.json': '/nowhere/evengrey.json' });
    assert.match(outside.problems[0], /a link that leads out of the book's folder/);
    const circle = await settingsBefore({}, { 'evengrey.json': 'evengrey.json' });
    assert.deepEqual(circle.problems, []);
    assert.deepEqual(circle.settings?.targets, []);
  });

  it('that are wrong are told where', async () => {
    const { problems } = await settingsBefore({
      'evengrey.json': '{\n  "process": "inkjet",\n  "profile": "none.icc"\n}',
    });
    assert.deepEqual(problems, ['evengrey.json:3: There is no file "none.icc".']);
    const large = await settingsBefore({ 'evengrey.json': ' '.repeat(5 * 1024 * 1024) });
    assert.match(large.problems[0], /is larger than 4 MB/);
  });

  it('are refused for what a check of a folder refuses, in the same words', async () => {
    const naming = (layouts: string, more: Files = {}, links: Record<string, string> = {}) =>
      settingsBefore(
        { 'evengrey.json': `{ "layouts": ${layouts} }`, 'book.tex': 'text', 'parts/one.tex': '', ...more },
        links,
      );
    const layout = await naming('["boook.tex"]');
    assert.deepEqual(layout.problems, [
      'evengrey.json:1: There is no layout "boook.tex". Did you mean "book.tex"?',
    ]);
    assert.deepEqual((await naming('["picture.tif"]', { 'picture.tif': '' })).problems, [
      'evengrey.json:1: "picture.tif" is no layout that can be read. Markdown, HTML, CSS, LaTeX, Typst and AsciiDoc are.',
    ]);
    // a folder, a pattern, and a link to a file are as good as on the disk
    assert.deepEqual(
      (await naming('["book.tex", "parts", "none/*.md", "linked.tex"]', {}, { 'linked.tex': 'book.tex' }))
        .problems,
      [],
    );
    const behind = await naming('["short/one.tex"]', {}, { short: 'parts' });
    assert.match(behind.problems[0], /lies behind "short", a link to a folder/);
    const house = await settingsBefore({ 'evengrey.json': '{ "house": "house/noth.json" }' });
    assert.deepEqual(house.problems, ['evengrey.json:1: There is no file "house/noth.json".']);
  });
});

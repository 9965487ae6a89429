import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { loadSettings } from '../../../src/book/settings/load';
import { makeDemo, writeFirst } from '../../../src/editor/checker/start';
import type { FirstAnswers } from '../../../src/shared/first-settings';
import { temporaryFolder } from '../../book/support/folder';

const answers: FirstAnswers = { house: '', process: 'inkjet', paper: 'matt-coated', light: 'D50' };
const never = new AbortController().signal;
const demoFile = path.resolve(process.env.EVENGREY_DIST ?? 'dist', 'demo.js');

describe('writing first settings', () => {
  it('writes what loads without a problem', async () => {
    const root = temporaryFolder({ 'pictures/1.jpg': '' });
    assert.equal(await writeFirst({ root, answers }, null, never), true);
    const { settings, problems } = await loadSettings(root);
    assert.deepEqual(problems, []);
    assert.deepEqual([settings?.targets[0].process, settings?.pictures], ['inkjet', ['pictures']]);
  });

  it('leaves settings as they are that stand there, by whatever they are', async () => {
    for (const there of ['{ "process": "offset-coated" }', '', 'not settings at all']) {
      const root = temporaryFolder({ 'evengrey.json': there });
      assert.equal(await writeFirst({ root, answers }, null, never), false);
      assert.equal(fs.readFileSync(path.join(root, 'evengrey.json'), 'utf8'), there);
    }
  });

  it('writes nothing once it is given up', async () => {
    const root = temporaryFolder({});
    await assert.rejects(writeFirst({ root, answers }, null, AbortSignal.abort()));
    assert.deepEqual(fs.readdirSync(root), []);
  });
});

describe('the demo book, made for the editor', () => {
  it('is drawn by a process of its own into a folder that is not there yet', async () => {
    const folder = path.join(temporaryFolder({}), 'demo');
    await makeDemo(folder, demoFile);
    const { problems } = await loadSettings(folder);
    assert.deepEqual(problems, []);
    assert.ok(fs.readdirSync(path.join(folder, 'pictures')).length >= 8);
  }).timeout(60_000);

  it('is not put among what is there', async () => {
    const folder = temporaryFolder({ 'mine.txt': 'mine' });
    await assert.rejects(makeDemo(folder, demoFile), /is not empty, and the demo overwrites nothing/);
    assert.deepEqual(fs.readdirSync(folder), ['mine.txt']);
  });
});

import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import {
  book,
  checkedBook,
  compared,
  neutral,
  picture,
  pointer,
  settings,
} from '../revisions/support/compared';
import { commit, git, partialClone, repositoryOf } from '../revisions/support/repository';

describe('comparing a book of which one picture is not fetched', () => {
  it('judges the others, and names the one that was left out, without reading any', async () => {
    const { top, checked } = checkedBook({ 'plates/lost.tif': pointer('1') });
    const cache = await checked();
    commit(top, { 'plates/006.tif': picture('black-only', 1) });
    const warm = await compared(top, { cache });
    assert.deepEqual([warm.scope, warm.read.length], ['book', 1]);
    assert.equal(warm.changes[0].pages[0].matches[0].verdict, 'differs');
    assert.ok(
      warm.notices.some(notice => /^plates\/lost\.tif did not change and cannot be read/.test(notice)),
    );
    const cold = await compared(top, { whole: true });
    assert.deepEqual({ ...cold, read: [] }, { ...warm, read: [] }, 'whatever was remembered');
  });

  it('tells how large files were and are, not how large what only points to one is', async () => {
    const [small, large] = [neutral(1), `${neutral(1)}${'.'.repeat(500)}`];
    const top = repositoryOf({ 'a.tif': small, 'b.tif': small, 'c.tif': small });
    commit(top, { 'a.tif': large, 'b.tif': pointer('1'), 'd.tif': large });
    const { changes } = await compared(top);
    assert.deepEqual(
      changes.map(({ path, bytes }) => [path, bytes]),
      [
        ['a.tif', { before: small.length, after: large.length }],
        ['b.tif', null],
        ['d.tif', null],
      ],
    );
  });

  it('knows a picture that was fetched since, if it was read, else says that it was not looked at', async () => {
    const content = neutral('large');
    const sha256 = createHash('sha256').update(content).digest('hex');
    const text = `version https://git-lfs.github.com/spec/v1\noid sha256:${sha256}\nsize ${content.length}\n`;
    const { top, checked } = checkedBook({ 'plates/large.tif': text });
    const cache = await checked();
    commit(top, { 'plates/006.tif': neutral('new') });
    const store = path.join(top, '.git/lfs/objects', sha256.slice(0, 2), sha256.slice(2, 4));
    fs.mkdirSync(store, { recursive: true });
    fs.writeFileSync(path.join(store, sha256), content);
    assert.equal((await compared(top, { cache })).scope, 'changes');
    assert.equal((await compared(top, { cache, whole: true })).scope, 'book');
    assert.deepEqual((await compared(top, { cache })).scope, 'book', 'it is remembered');
  });
});

describe('comparing a book of which a large file before is not fetched', () => {
  it('tells nothing of what that was: it has neither ended, nor did it stand', async () => {
    const ten = Array.from({ length: 10 }, (_, i) => `plates/large${i}.tif`);
    const large = Object.fromEntries(ten.map((name, i) => [name, pointer(String(i))]));
    const top = repositoryOf({ ...settings, ...book(2), 'one.tif': pointer('a'), ...large });
    commit(top, {
      'one.tif': neutral('fetched'),
      ...Object.fromEntries(ten.slice(1).map(name => [name, neutral(name)])),
    });
    const { changes, summary, others } = await compared(top, { whole: true });
    assert.equal(changes.length, 10);
    assert.deepEqual(
      changes.flatMap(({ pages }) => pages[0].findings.ended.map(({ rule }) => rule)),
      [],
    );
    assert.deepEqual(
      [summary.base.errors, summary.ended.errors, summary.new.errors, summary.unchanged.errors],
      [1, 0, 0, 1],
      'of the one that did not change it is as before',
    );
    assert.deepEqual(others, []);
  });
});

describe('comparing in a clone without all contents', () => {
  const lost = (name: string) =>
    new RegExp(`^NotInCloneError: "${name}" .* is not in this clone.*git fetch --refetch --no-filter`);

  it('says which picture is missing and how to fetch it, before any is read', async () => {
    const top = repositoryOf({ ...settings, ...book(4) });
    commit(top, { 'plates/001.tif': neutral('a'), 'plates/003.tif': neutral('b') });
    const clone = partialClone(top);
    const read = () => assert.fail('nothing is read');
    const pool = { factsOf: read, pixels: read };
    await assert.rejects(compared(clone, { pool }), lost('plates/001.tif'));
    git(clone, 'fetch', '--quiet', '--refetch', '--no-filter');
    assert.equal((await compared(clone)).changes.length, 2);
  });

  it('compares what needs nothing that is missing', async () => {
    const top = repositoryOf({ ...settings, ...book(4) });
    commit(top, { 'plates/new.tif': picture('black-only', 1) });
    const { changes, scope } = await compared(partialClone(top), { whole: true });
    assert.deepEqual([changes.length, scope], [1, 'book']);
  });

  it('takes no settings, ignore file or layout for one that is not there', async () => {
    const before = {
      'evengrey.json': '{ "process": "offset-coated", "layouts": ["*.md"] }',
      '.gitignore': '# nothing',
      'book.md': '![](plates/001.tif){width=50mm}',
    };
    const now = { 'evengrey.json': settings['evengrey.json'], '.gitignore': '# none', 'book.md': 'Nothing.' };
    for (const [name, content] of Object.entries(now)) {
      const top = repositoryOf({ ...before, ...book(2) });
      commit(top, { [name]: content });
      await assert.rejects(compared(partialClone(top)), lost(name.replace('.', '\\.')), name);
    }
  });

  it('says the same where folders of the past are missing', async () => {
    const top = repositoryOf({ ...settings, ...book(2) });
    commit(top, { 'plates/new.tif': neutral('new') });
    await assert.rejects(
      compared(partialClone(top, 'tree:0')),
      /^NotInCloneError: Something that is needed is not in/,
    );
  });
});

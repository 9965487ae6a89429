import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { checkedBook, compared, neutral, picture, pointer } from './support/compared';
import { commit, repositoryOf } from './support/repository';

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

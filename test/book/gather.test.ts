import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { FactsCache } from '../../src/book/cache/cache';
import { stampOf } from '../../src/book/cache/stamp';
import { gather, recall } from '../../src/book/gather';
import type { PictureFacts } from '../../src/shared/picture';
import { brokenFacts, greyFacts } from './support/facts';
import { temporaryFolder } from './support/folder';

/** A pool that knows the content of each file by its hash, and which files it was asked to read. */
function fakePool(answer?: (file: string) => PictureFacts[] | undefined) {
  const asked: string[] = [];
  return {
    asked,
    async facts(file: string) {
      asked.push(path.basename(file));
      const sha256 = createHash('sha256').update(fs.readFileSync(file)).digest('hex');
      return answer?.(file) ?? [greyFacts(sha256)];
    },
  };
}

function book(files: Record<string, string>) {
  const root = temporaryFolder(files);
  const cacheFolder = temporaryFolder();
  const past = new Date(Date.now() - 60_000);
  for (const name of Object.keys(files)) fs.utimesSync(path.join(root, name), past, past);
  const found = (name: string) => ({ path: name, file: path.join(root, name), obstacle: null });
  const open = () => FactsCache.open(cacheFolder, root, 'v');
  return {
    root,
    open,
    async read(pool: ReturnType<typeof fakePool>, names = Object.keys(files), signal?: AbortSignal) {
      const cache = await open();
      const facts = await gather(names.map(found), { realRoot: root, pool, cache, signal });
      await cache.save();
      return facts;
    },
  };
}

/** Long enough for the file system's clock to have moved on since the files were written. */
const settle = () => new Promise(resolve => setTimeout(resolve, 150));

describe('recalling facts', () => {
  it('knows all of them, or says that it does not', async () => {
    const { root, read, open } = book({ 'a.jpg': 'one', 'b.jpg': 'two2', 'p.jpg': 'a pointer' });
    await settle();
    const pool = fakePool(file => (file.endsWith('p.jpg') ? [brokenFacts('not-fetched')] : undefined));
    const facts = await read(pool);
    const found = ['a.jpg', 'b.jpg', 'p.jpg'].map(name => ({
      ...{ path: name, file: path.join(root, name) },
      obstacle: null,
    }));
    assert.deepEqual(await recall(found, await open()), facts, 'a pointer is what it is too');
    assert.equal(await recall(found, null), null);
    fs.writeFileSync(path.join(root, 'b.jpg'), 'changed');
    assert.equal(await recall(found, await open()), null);
    const gone = { reason: 'permission', text: 'You may not.' } as const;
    const obstacle = { path: 'c.jpg', file: path.join(root, 'c.jpg'), obstacle: gone };
    const known = await recall([found[0], obstacle], await open());
    assert.deepEqual(known?.[1][0].unreadable, gone);
  });
});

describe('gathering facts', () => {
  it('reads once what does not change', async () => {
    const { read } = book({ 'a.jpg': 'one', 'b.jpg': 'two2' });
    await settle();
    const pool = fakePool();
    const first = await read(pool);
    assert.deepEqual(await read(pool), first);
    assert.deepEqual(pool.asked.sort(), ['a.jpg', 'b.jpg']);
  });

  it('reads again what changed, even with its size and its time of change put back', async () => {
    const { root, read } = book({ 'a.jpg': 'one' });
    await settle();
    const pool = fakePool();
    await read(pool);
    const file = path.join(root, 'a.jpg');
    const { atime, mtime } = fs.statSync(file);
    fs.writeFileSync(file, 'two');
    fs.utimesSync(file, atime, mtime);
    const [[facts]] = await read(pool);
    assert.equal(facts.sha256, createHash('sha256').update('two').digest('hex'));
    assert.deepEqual(pool.asked, ['a.jpg', 'a.jpg']);
  });

  it('hashes what was touched, copied or moved instead of reading it', async () => {
    const { root, read } = book({ 'a.jpg': 'one' });
    const pool = fakePool();
    await read(pool);
    fs.copyFileSync(path.join(root, 'a.jpg'), path.join(root, 'copy.jpg'));
    fs.utimesSync(path.join(root, 'a.jpg'), new Date(), new Date());
    await read(pool, ['a.jpg', 'copy.jpg']);
    assert.deepEqual(pool.asked, ['a.jpg']);
  });

  it('does not trust the times of a file that was changed in the moment it was read', async () => {
    const { root, read, open } = book({ 'a.jpg': 'one', 'b.jpg': 'two' });
    await settle();
    // a time to come stands for every change that the clock cannot tell from the reading
    fs.utimesSync(path.join(root, 'b.jpg'), new Date(), new Date(Date.now() + 60_000));
    await read(fakePool());
    const cache = await open();
    const settled = (name: string) => {
      const stamp = stampOf(fs.statSync(path.join(root, name), { bigint: true }));
      return cache.lookUp(name, stamp)?.settled;
    };
    assert.deepEqual([settled('a.jpg'), settled('b.jpg')], [true, false]);
  });

  it('reads once more when a file changes under the reader’s hands', async () => {
    const { read } = book({ 'a.jpg': 'one' });
    let reads = 0;
    const pool = fakePool(file => {
      if (++reads === 1) fs.writeFileSync(file, 'another');
      return undefined;
    });
    const [[facts]] = await read(pool);
    assert.equal(facts.sha256, createHash('sha256').update('another').digest('hex'));
    assert.equal(reads, 2);
  });

  it('keeps no failure that may be gone the next time', async () => {
    const { read } = book({ 'a.jpg': 'one' });
    await settle();
    const pool = fakePool(() => [brokenFacts('timeout')]);
    await read(pool);
    await read(pool);
    assert.equal(pool.asked.length, 2);
  });

  it('says what cannot be opened without asking a reader', async () => {
    const root = temporaryFolder();
    const pool = fakePool();
    const why = { reason: 'not-a-file' as const, text: 'This is a pipe.' };
    const facts = await gather(
      [
        { path: 'p.jpg', file: path.join(root, 'p.jpg'), obstacle: why },
        { path: 'gone.jpg', file: path.join(root, 'gone.jpg'), obstacle: null },
      ],
      { realRoot: root, pool, cache: null },
    );
    assert.deepEqual(facts[0][0].unreadable, why);
    assert.equal(facts[1][0].unreadable?.reason, 'missing');
    assert.deepEqual(pool.asked, []);
  });

  it('stops when cancelled', async () => {
    const { read } = book({ 'a.jpg': 'one' });
    await assert.rejects(read(fakePool(), ['a.jpg'], AbortSignal.abort()), { name: 'AbortError' });
  });
});

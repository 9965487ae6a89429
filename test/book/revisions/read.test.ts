import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { FactsCache } from '../../../src/book/cache/cache';
import { Blobs } from '../../../src/book/git/blobs';
import { openRepository } from '../../../src/book/git/repository';
import { readBlobs } from '../../../src/book/revisions/read';
import type { PictureFacts } from '../../../src/shared/picture';
import type { Content } from '../../../src/shared/reader-protocol';
import { bytesOf } from '../support/content';
import { brokenFacts, greyFacts } from '../support/facts';
import { temporaryFolder } from '../support/folder';
import { type Files, git, repositoryOf } from './support/repository';

const sha256 = (content: string | Uint8Array) => createHash('sha256').update(content).digest('hex');
const pointerTo = (content: string) =>
  `version https://git-lfs.github.com/spec/v1\noid sha256:${sha256(content)}\nsize ${content.length}\n`;

let blobs: Blobs | undefined;
afterEach(() => blobs?.close());

async function reading(files: Files, factsIn = (sha256: string): PictureFacts => greyFacts(sha256)) {
  const top = repositoryOf(files);
  const repository = await openRepository(top);
  const asked: string[] = [];
  const factsOf = async (where: Content): Promise<PictureFacts[] | null> => {
    const content = bytesOf(where);
    if (!content) return null;
    asked.push(content.toString('utf8', 0, 20));
    return [factsIn(sha256(content))];
  };
  const pool = { factsOf };
  blobs = new Blobs(repository);
  const oid = (name: string) => git(top, 'rev-parse', `HEAD:${name}`).trim();
  return {
    ...{ top, asked, oid },
    read: async (names: string[], cache: FactsCache | null = null) => {
      const contents = names.map(path => ({ path, oid: oid(path) }));
      const facts = await readBlobs(contents, { repository, blobs: blobs!, pool, cache });
      return names.map(name => facts.get(oid(name))![0]);
    },
    store(content: string) {
      const name = sha256(content);
      const file = path.join(top, '.git/lfs/objects', name.slice(0, 2), name.slice(2, 4), name);
      fs.mkdirSync(path.dirname(file), { recursive: true });
      fs.writeFileSync(file, content);
      return file;
    },
  };
}

describe('reading revisions', () => {
  it('reads a content once, whatever its names, and leaves nothing behind', async () => {
    const before = fs
      .readdirSync(path.dirname(temporaryFolder()))
      .filter(name => /^evengrey-\w{6}$/.test(name));
    const { read, asked } = await reading({
      'a.tif': 'x'.repeat(2000),
      'copy.tif': 'x'.repeat(2000),
      'tiny.tif': 'tiny',
    });
    const [a, copy, tiny] = await read(['a.tif', 'copy.tif', 'tiny.tif']);
    assert.deepEqual([a.sha256, copy], [sha256('x'.repeat(2000)), a]);
    assert.equal(tiny.sha256, sha256('tiny'));
    assert.equal(asked.length, 2);
    const after = fs
      .readdirSync(path.dirname(temporaryFolder()))
      .filter(name => /^evengrey-\w{6}$/.test(name));
    assert.deepEqual(after, before);
  });

  it('reads nothing that the cache knows, in this run or the next', async () => {
    const { read, asked, top } = await reading({ 'a.tif': 'x'.repeat(2000) });
    const folder = temporaryFolder();
    const cache = await FactsCache.open(folder, top, 'v');
    const first = await read(['a.tif'], cache);
    await cache.save();
    assert.deepEqual(await read(['a.tif'], await FactsCache.open(folder, top, 'v')), first);
    assert.equal(asked.length, 1);
  });

  it('reads nothing that a check of the folder has read', async () => {
    const content = 'x'.repeat(2000);
    const { read, asked, top } = await reading({ 'a.tif': content });
    const cache = await FactsCache.open(temporaryFolder(), top, 'v');
    const facts = [greyFacts(sha256(content))];
    cache.remember('a.tif', { size: 2000, mtime: 1n, ctime: 1n, inode: 1n }, 2n, sha256(content), facts);
    assert.deepEqual(await read(['a.tif'], cache), facts);
    assert.deepEqual(asked, []);
  });

  it('reads the picture that a large-file pointer stands for from the local store', async () => {
    const { read, store, asked } = await reading({ 'a.tif': pointerTo('the picture itself') });
    store('the picture itself');
    const [facts] = await read(['a.tif']);
    assert.deepEqual(asked, ['the picture itself']);
    assert.equal(facts.sha256, sha256('the picture itself'));
  });

  it('says of a pointer without its picture that it has not been fetched, and keeps no memory of that', async () => {
    const { read, store, top } = await reading({ 'a.tif': pointerTo('the picture itself') });
    const cache = await FactsCache.open(temporaryFolder(), top, 'v');
    const [facts] = await read(['a.tif'], cache);
    assert.deepEqual([facts.unreadable?.reason, facts.format], ['not-fetched', 'lfs-pointer']);
    assert.match(facts.unreadable!.text, /git lfs fetch --all/);
    assert.equal(facts.sha256, sha256(pointerTo('the picture itself')), 'as where a folder is checked');
    store('the picture itself');
    assert.equal((await read(['a.tif'], cache))[0].unreadable, null);
  });

  it('names by its content what was given up before it was hashed, small or large', async () => {
    const large = 'no picture '.repeat(500);
    const { read } = await reading({ 'small.tif': 'x', 'large.tif': large }, () => ({
      ...brokenFacts('corrupt'),
      sha256: '',
    }));
    const named = await read(['small.tif', 'large.tif']);
    assert.deepEqual(
      named.map(({ sha256 }) => sha256),
      [sha256('x'), sha256(large)],
    );
  });

  it('does not take another file for the one that the pointer names', async () => {
    const { read, store } = await reading({ 'a.tif': pointerTo('the picture itself') });
    fs.writeFileSync(store('the picture itself'), 'another of like size'.slice(0, 18));
    const [facts] = await read(['a.tif']);
    assert.match(facts.unreadable!.text, /is not the one that its pointer names/);
  });
});

import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { Stretches, unpackInto } from '../../../src/book/git/stretches';
import { git, repositoryOf } from '../revisions/support/repository';
import { bytesOf } from '../support/content';
import { temporaryFolder } from '../support/folder';

const MEGABYTE = 1 << 20;
const noise = (bytes: number, seed: number) =>
  Buffer.from(Uint8Array.from({ length: bytes }, (_, i) => (i * 7919 + seed * 104729) >>> 3));

function stored(contents: Record<string, Buffer | string>) {
  const top = repositoryOf(contents);
  const sized = Object.entries(contents).map(([name, content]) => ({
    oid: git(top, 'rev-parse', `HEAD:${name}`).trim(),
    size: content.length,
    path: name,
  }));
  return { repository: { root: top, env: {} }, sized, folder: temporaryFolder() };
}

describe('stretches', () => {
  it('are contents to the byte, in whatever order they are taken, and leave nothing behind', async () => {
    const contents = { 'a.tif': noise(300_001, 1), 'b.tif': 'a few\nlines\n', 'c.tif': noise(70_000, 2) };
    const { repository, sized, folder } = stored(contents);
    const stretches = new Stretches(repository, sized, { folder });
    const taken = await Promise.all(
      [...sized].reverse().map(({ oid }) => stretches.take(oid, async content => bytesOf(content))),
    );
    assert.deepEqual(taken.reverse(), Object.values(contents).map(Buffer.from));
    assert.deepEqual(fs.readdirSync(folder), []);
    await stretches.close();
  });

  it('lie there for so much at a time, also where a slow one is waited for, and what was read goes', async () => {
    const { repository, sized, folder } = stored(
      Object.fromEntries(Array.from({ length: 6 }, (_, i) => [`${i}.tif`, Buffer.alloc(7 * MEGABYTE, i)])),
    );
    const stretches = new Stretches(repository, sized, { folder });
    const there = () => fs.readdirSync(folder).map(name => fs.statSync(path.join(folder, name)).size);
    await stretches.take(sized[0].oid, async () => {
      for (const [i, { oid }] of sized.entries()) {
        if (i === 0) continue;
        const [first] = await stretches.take(oid, async content => bytesOf(content)!.subarray(0, 1));
        assert.equal(first, i);
        assert.ok(there().length <= 3, `${there()}`);
        assert.ok(Math.max(...there()) < 16 * MEGABYTE);
      }
    });
    await stretches.close();
    assert.deepEqual(there(), []);
  });

  it('of what git does not have, or calls otherwise, are none', async () => {
    const { repository, sized, folder } = stored({ 'a.tif': noise(5000, 1) });
    const wrong = [
      {
        one: { ...sized[0], oid: '1'.repeat(40) },
        says: /^NotInCloneError: "a\.tif" as one of the revisions/,
      },
      { one: { ...sized[0], size: 4999 }, says: /^GitError: git gave something else/ },
    ];
    for (const [i, { one, says }] of wrong.entries()) {
      const own = path.join(folder, String(i));
      fs.mkdirSync(own);
      const stretches = new Stretches(repository, [one], { folder: own });
      await assert.rejects(
        stretches.take(one.oid, async () => assert.fail('is taken')),
        says,
      );
      await stretches.close();
    }
  });

  for (const how of ['closed', 'cancelled'])
    it(`are given up when ${how}, whatever git is at`, async () => {
      const { repository, sized, folder } = stored({ 'a.tif': noise(12 * MEGABYTE, 1) });
      const cancelled = new AbortController();
      const stretches = new Stretches(repository, sized, { folder, signal: cancelled.signal });
      const taken = stretches.take(sized[0].oid, async () => 'taken').catch(({ name }) => name);
      if (how === 'cancelled') cancelled.abort();
      else await stretches.close();
      assert.equal(await taken, 'AbortError');
      await stretches.close();
    });
});

describe('a content by itself', () => {
  it('is written into a file to the byte; what git does not have is told', async () => {
    const content = noise(300_001, 3);
    const { repository, sized, folder } = stored({ 'a.tif': content });
    const file = path.join(folder, 'a');
    await unpackInto(repository, sized[0], file);
    assert.deepEqual(fs.readFileSync(file), content);
    const missing = unpackInto(repository, { oid: '1'.repeat(40) }, path.join(folder, 'b'));
    await assert.rejects(missing, /^GitError: git cat-file failed/);
  });

  it('says that there is no room left where that is why git could not write', async () => {
    const { repository, folder } = stored({ 'a.tif': 'a' });
    const { statfsSync } = fs;
    const failing = () => unpackInto(repository, { oid: '1'.repeat(40) }, path.join(folder, 'a'));
    try {
      Object.assign(fs, { statfsSync: () => ({ ...statfsSync(folder), bavail: 0 }) });
      await assert.rejects(failing, /^GitError: There is no room left where temporary files go .* TMPDIR\.$/);
    } finally {
      Object.assign(fs, { statfsSync });
    }
  });
});

import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { Stretches, unpackInto } from '../../../src/book/revisions/stretches';
import { bytesOf } from '../support/content';
import { temporaryFolder } from '../support/folder';
import { git, repositoryOf } from './support/repository';

const MEGABYTE = 1 << 20;
const noise = (bytes: number, seed: number) =>
  Buffer.from(Uint8Array.from({ length: bytes }, (_, i) => (i * 7919 + seed * 104729) >>> 3));

function stored(contents: Record<string, Buffer | string>) {
  const top = repositoryOf(contents);
  const sized = Object.entries(contents).map(([name, content]) => ({
    oid: git(top, 'rev-parse', `HEAD:${name}`).trim(),
    size: content.length,
  }));
  return { repository: { root: top, env: {} }, sized, folder: temporaryFolder() };
}

describe('stretches', () => {
  it('are contents to the byte, in whatever order they are taken, and leave nothing behind', async () => {
    const contents = { 'a.tif': noise(300_001, 1), 'b.tif': 'a few\nlines\n', 'c.tif': noise(70_000, 2) };
    const { repository, sized, folder } = stored(contents);
    const stretches = new Stretches(repository, sized, folder);
    const taken = await Promise.all(
      [...sized].reverse().map(({ oid }) => stretches.take(oid, async content => bytesOf(content))),
    );
    assert.deepEqual(taken.reverse(), Object.values(contents).map(Buffer.from));
    assert.deepEqual(fs.readdirSync(folder), []);
    await stretches.close();
  });

  it('lie there for so much at a time, and what was read goes', async () => {
    const { repository, sized, folder } = stored(
      Object.fromEntries(Array.from({ length: 5 }, (_, i) => [`${i}.tif`, Buffer.alloc(30 * MEGABYTE, i)])),
    );
    const stretches = new Stretches(repository, sized, folder);
    const most = [];
    for (const { oid } of sized) {
      const [first] = await stretches.take(oid, async content => bytesOf(content)!.subarray(0, 1));
      const there = fs.readdirSync(folder).map(name => fs.statSync(path.join(folder, name)).size);
      most.push(Math.max(0, ...there));
      assert.ok(there.length <= 2);
      assert.equal(
        first,
        sized.findIndex(one => one.oid === oid),
      );
    }
    assert.ok(Math.max(...most) < 64 * MEGABYTE);
    await stretches.close();
    assert.deepEqual(fs.readdirSync(folder), []);
  });

  it('of what git does not have, or calls otherwise, are none', async () => {
    const { repository, sized, folder } = stored({ 'a.tif': noise(5000, 1) });
    const wrong = [
      { oid: '1'.repeat(40), size: 5000 },
      { ...sized[0], size: 4999 },
    ];
    for (const [i, one] of wrong.entries()) {
      const own = path.join(folder, String(i));
      fs.mkdirSync(own);
      const stretches = new Stretches(repository, [one], own);
      await assert.rejects(
        stretches.take(one.oid, async () => assert.fail('is taken')),
        /^GitError: git gave something else/,
      );
      await stretches.close();
    }
  });

  it('are given up when closed, whatever git is at', async () => {
    const { repository, sized, folder } = stored({ 'a.tif': noise(500_000, 1) });
    const stretches = new Stretches(repository, sized, folder);
    await stretches.close();
    await assert.rejects(stretches.take(sized[0].oid, async () => assert.fail('is taken')));
  });
});

describe('a content by itself', () => {
  it('is written into a file to the byte; what git does not have is told', async () => {
    const content = noise(300_001, 3);
    const { repository, sized, folder } = stored({ 'a.tif': content });
    const file = path.join(folder, 'a');
    await unpackInto(repository, sized[0].oid, file);
    assert.deepEqual(fs.readFileSync(file), content);
    const missing = unpackInto(repository, '1'.repeat(40), path.join(folder, 'b'));
    await assert.rejects(missing, /^GitError: git cat-file failed/);
  });
});

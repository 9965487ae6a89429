import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { Blobs } from '../../../src/book/git/blobs';
import { NotInCloneError } from '../../../src/book/git/git';
import { git, repositoryOf } from '../revisions/support/repository';
import { temporaryFolder } from '../support/folder';

const MOST = 100;
const oidOf = (top: string, file: string) => git(top, 'rev-parse', `HEAD:${file}`).trim();
const noise = (bytes: number) => Buffer.from(Array.from({ length: bytes }, (_, i) => (i * 7919) % 256));

describe('blobs', () => {
  let blobs: Blobs | undefined;
  afterEach(() => blobs?.close());

  it('are handed over to the byte, in whatever order they are asked for', async () => {
    const top = repositoryOf({ 'large.tif': noise(300_001), 'small.txt': 'a few\nlines\n', 'empty.txt': '' });
    blobs = new Blobs({ root: top, env: {} });
    for (const name of ['large.tif', 'small.txt', 'empty.txt']) fs.rmSync(path.join(top, name));
    const names = ['small.txt', 'large.tif', 'empty.txt'];
    const [small, large, empty] = await Promise.all(
      names.map(name => blobs!.small(oidOf(top, name), 300_001, name)),
    );
    assert.equal(String(small), 'a few\nlines\n');
    assert.deepEqual(large, noise(300_001));
    assert.equal(empty!.length, 0);
  });

  it('that are larger than is wanted are nothing, and the next is read all the same', async () => {
    const top = repositoryOf({ 'large.tif': noise(200_000), 'small.txt': 'text' });
    blobs = new Blobs({ root: top, env: {} });
    assert.equal(await blobs.small(oidOf(top, 'large.tif'), MOST, 'large.tif'), null);
    assert.equal(String(await blobs.small(oidOf(top, 'small.txt'), MOST, 'small.txt')), 'text');
  });

  it('of any size are told by how they begin, and the next is read all the same', async () => {
    const top = repositoryOf({ 'large.tif': noise(200_000), 'small.txt': 'text' });
    blobs = new Blobs({ root: top, env: {} });
    assert.deepEqual(
      await blobs.head(oidOf(top, 'large.tif'), 512, 'large.tif'),
      noise(200_000).subarray(0, 512),
    );
    assert.equal(String(await blobs.head(oidOf(top, 'small.txt'), 512, 'small.txt')), 'text');
    await assert.rejects(blobs.head('0'.repeat(40), 512, 'gone.html'), NotInCloneError);
  });

  it('that a file of the folder holds to the byte are taken from there, and those of another from git', async () => {
    const top = repositoryOf({ 'a.txt': 'one', 'b.txt': 'two' });
    const [a, b] = ['a.txt', 'b.txt'].map(name => oidOf(top, name));
    fs.writeFileSync(path.join(top, 'b.txt'), 'TWO');
    fs.rmSync(path.join(top, '.git/objects', a.slice(0, 2), a.slice(2)));
    blobs = new Blobs({ root: top, env: {} });
    assert.equal(String(await blobs.small(a, MOST, 'a.txt')), 'one');
    assert.equal(String(await blobs.small(b, MOST, 'b.txt')), 'two');
    fs.rmSync(path.join(top, 'a.txt'));
    assert.equal(String(await blobs.small(a, MOST, 'a.txt')), 'one', 'it is remembered');
    assert.equal(
      await blobs.small(a, 2, 'a.txt').catch(({ name }) => name),
      'NotInCloneError',
      'as too large',
    );
  });

  it('that are not in this clone are named, without a way to the network, and the next is read all the same', async () => {
    const top = repositoryOf({ 'a.txt': 'a' });
    git(top, 'config', 'uploadpack.allowFilter', 'true');
    const clone = path.join(temporaryFolder(), 'clone');
    git(top, 'clone', '--quiet', '--no-checkout', '--filter=blob:none', `file://${top}`, clone);
    fs.writeFileSync(path.join(clone, 'here.txt'), 'here');
    const here = git(clone, 'hash-object', '-w', 'here.txt').trim();
    blobs = new Blobs({ root: clone, env: {} });
    for (const oid of [oidOf(top, 'a.txt'), '1'.repeat(40)]) {
      const lost = /^NotInCloneError: "a\.txt" .* is not in this clone, .*git fetch --refetch --no-filter/;
      await assert.rejects(blobs.small(oid, MOST, 'a.txt'), lost);
    }
    assert.equal(String(await blobs.small(here, MOST, 'here.txt')), 'here');
  });
});

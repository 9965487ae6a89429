import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import path from 'node:path';
import { Blobs } from '../../../src/book/git/blobs';
import { openRepository } from '../../../src/book/git/repository';
import { readBlobs } from '../../../src/book/revisions/read';
import type { Content } from '../../../src/shared/reader-protocol';
import { type Files, git, repositoryOf } from '../revisions/support/repository';
import { bytesOf } from '../support/content';
import { brokenFacts, greyFacts } from '../support/facts';
import { temporaryFolder, write } from '../support/folder';

/** Longer than any large-file pointer, as pictures are. */
const picture = (text: string) => text.padEnd(1100, '.');
const sha256 = (content: string) => createHash('sha256').update(content).digest('hex');

/** A file's times are trusted once the clock has moved on since it was written. */
const later = () => new Promise(resolve => setTimeout(resolve, 150));

/** Reads what HEAD holds of `a.tif`: the content, and whether it came from the book's folder. */
async function readHead(top: string, whileReading = () => {}) {
  const repository = await openRepository(top);
  const blobs = new Blobs(repository);
  const from: string[] = [];
  const factsOf = async (where: Content) => {
    const content = bytesOf(where)?.toString('utf8');
    if (content === undefined) return null;
    from.push(path.relative(fs.realpathSync(top), where.file));
    whileReading();
    return [{ ...greyFacts(sha256(content)), read: content.replace(/\.+$/, '') }];
  };
  const pool = { factsOf };
  const oid = git(top, 'rev-parse', 'HEAD:a.tif').trim();
  const facts = await readBlobs([{ oid, path: 'a.tif' }], { repository, blobs, pool, cache: null });
  blobs.close();
  const [page] = facts.get(oid)! as unknown as [{ read?: string }];
  return { read: page.read, inFolder: from.map(file => file === 'a.tif') };
}

async function settledBook(files: Files = { 'a.tif': picture('one') }): Promise<string> {
  const top = fs.realpathSync(repositoryOf(files));
  // older than git's index, which then goes by it
  const past = new Date(Date.now() - 60_000);
  for (const name of Object.keys(files)) fs.utimesSync(path.join(top, name), past, past);
  git(top, 'update-index', '--refresh');
  await later();
  return top;
}

/** Puts another content of the same size into a file and gives it the times that it had. */
async function changeUnseen(file: string, content: string): Promise<void> {
  const { atime, mtime } = fs.statSync(file);
  fs.writeFileSync(file, content);
  fs.utimesSync(file, atime, mtime);
  await later();
}

describe('contents in the book’s folder', () => {
  it('are read there and not unpacked from git', async () => {
    assert.deepEqual(await readHead(await settledBook()), { read: 'one', inFolder: [true] });
  });

  it('are read there in a repository that names by SHA-256, too', async () => {
    const top = fs.realpathSync(temporaryFolder());
    git(top, 'init', '--quiet', '--object-format=sha256');
    write(top, { 'a.tif': picture('one') });
    git(top, 'add', '--all');
    git(top, 'commit', '--quiet', '-m', 'one');
    await later();
    assert.deepEqual(await readHead(top), { read: 'one', inFolder: [true] });
  });

  it('are not taken for git’s where the file was changed', async () => {
    const top = await settledBook();
    write(top, { 'a.tif': picture('another') });
    await later();
    assert.deepEqual(await readHead(top), { read: 'one', inFolder: [false] });
  });

  for (const flag of ['', '--assume-unchanged', '--skip-worktree'])
    it(`nor where size and time are what they were and git looks away (${flag || 'of itself'})`, async () => {
      const top = await settledBook();
      // git then goes by size and the time of the last change of content alone
      git(top, 'config', 'core.trustctime', 'false');
      git(top, 'config', 'core.checkStat', 'minimal');
      if (flag) git(top, 'update-index', flag, 'a.tif');
      await changeUnseen(path.join(top, 'a.tif'), picture('two'));
      assert.equal(git(top, 'status', '--porcelain'), '', 'git sees no change');
      assert.deepEqual(await readHead(top), { read: 'one', inFolder: [false] });
    });

  it('nor where a filter made the file, of the same size, from what git holds', async () => {
    const top = await settledBook({ '.gitattributes': '*.tif filter=turn\n', 'a.tif': picture('one') });
    git(top, 'config', 'filter.turn.smudge', 'tr o 0');
    git(top, 'config', 'filter.turn.clean', 'tr 0 o');
    fs.rmSync(path.join(top, 'a.tif'));
    git(top, 'checkout', '--', 'a.tif');
    assert.match(fs.readFileSync(path.join(top, 'a.tif'), 'utf8'), /^0ne/);
    await later();
    assert.equal(git(top, 'status', '--porcelain'), '', 'git sees no change');
    assert.deepEqual(await readHead(top), { read: 'one', inFolder: [false] });
  });

  it('nor is the picture for the pointer that git holds in its place', async () => {
    const content = picture('the picture itself');
    const pointer = `version https://git-lfs.github.com/spec/v1\noid sha256:${sha256(content)}\nsize ${content.length}\n`;
    const top = await settledBook({ 'a.tif': pointer });
    write(top, { 'a.tif': content });
    await later();
    const { inFolder } = await readHead(top);
    assert.deepEqual(inFolder, []);
  });

  it('nor where its times may hide a later change, or where it was changed while it was read', async () => {
    const top = await settledBook();
    const file = path.join(top, 'a.tif');
    const { atime, mtime } = fs.statSync(file);
    // by a clock that goes ahead
    fs.utimesSync(file, atime, new Date(Date.now() + 60_000));
    await later();
    assert.deepEqual(await readHead(top), { read: 'one', inFolder: [false] });
    fs.utimesSync(file, atime, mtime);
    await later();
    const touched = () => write(top, { 'a.tif': picture('two') });
    assert.deepEqual(await readHead(top, touched), { read: 'one', inFolder: [true, false] });
  });

  it('nor through a link, nor where there is none any more', async () => {
    const top = await settledBook();
    fs.renameSync(path.join(top, 'a.tif'), path.join(top, 'moved.tif'));
    assert.deepEqual(await readHead(top), { read: 'one', inFolder: [false] });
    fs.symlinkSync('moved.tif', path.join(top, 'a.tif'));
    await later();
    assert.deepEqual(await readHead(top), { read: 'one', inFolder: [false] });
  });

  for (const reason of ['missing', 'permission', 'timeout'] as const)
    it(`are asked of git where the file is ${reason} to the reader`, async () => {
      const top = await settledBook();
      const repository = await openRepository(top);
      const asked: string[] = [];
      const pool = {
        async factsOf({ file }: Content) {
          asked.push(path.basename(file));
          return [file.endsWith('a.tif') ? { ...brokenFacts(reason), sha256: '' } : greyFacts('of git')];
        },
      };
      const oid = git(top, 'rev-parse', 'HEAD:a.tif').trim();
      const blobs = new Blobs(repository);
      const facts = await readBlobs([{ oid, path: 'a.tif' }], { repository, blobs, pool, cache: null });
      assert.deepEqual([facts.get(oid)![0].sha256, asked], ['of git', ['a.tif', oid]]);
    });

  it('end with the signal', async () => {
    const top = await settledBook();
    const repository = await openRepository(top);
    const pool = { factsOf: () => assert.fail('asked') };
    const oid = git(top, 'rev-parse', 'HEAD:a.tif').trim();
    const signal = AbortSignal.abort(new Error('stopped'));
    const blobs = new Blobs(repository);
    const asked = readBlobs([{ oid, path: 'a.tif' }], { repository, blobs, pool, cache: null, signal });
    await assert.rejects(asked, /stopped/);
  });
});

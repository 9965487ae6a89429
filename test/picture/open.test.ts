import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import fs from 'node:fs';
import net from 'node:net';
import os from 'node:os';
import path from 'node:path';
import { OtherContent, openPicture } from '../../src/picture/open';

describe('openPicture', () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'open-'));
  const at = (name: string) => path.join(folder, name);
  after(() => fs.rmSync(folder, { recursive: true }));

  it('holds a file that is small and hashes it when asked', () => {
    fs.writeFileSync(at('small'), 'abc');
    const sizes: number[][] = [];
    const file = openPicture({ file: at('small') }, (...size) => sizes.push(size));
    // FIPS 180-4's example message
    assert.equal(file.sha256(), 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    assert.equal(file.input.toString(), 'abc');
    assert.deepEqual(sizes, [[3, 0]]);
    assert.equal(openPicture({ file: at('small'), sha256: 'known' }).sha256(), 'known');
  });

  it('gives the path of a file too large to hold, with the same hash', () => {
    const block = Buffer.alloc(1 << 20, 7);
    const fd = fs.openSync(at('large'), 'w');
    for (let i = 0; i < 9; i++) fs.writeSync(fd, block);
    fs.closeSync(fd);
    const file = openPicture({ file: at('large') });
    try {
      assert.equal(file.input, at('large'));
      assert.equal(file.source.size, 9 << 20);
      const hash = createHash('sha256');
      for (let i = 0; i < 9; i++) hash.update(block);
      assert.equal(file.sha256(), hash.digest('hex'));
    } finally {
      file.close();
    }
  });

  it('takes a stretch of a file for the whole of it', () => {
    fs.writeFileSync(at('stretches'), 'xxabcyy');
    const sizes: number[][] = [];
    const stretch = { start: 2, size: 3 };
    const file = openPicture({ file: at('stretches'), stretch }, (...size) => sizes.push(size));
    assert.equal(file.sha256(), 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
    assert.deepEqual([file.bytes().toString(), file.source.size, sizes], ['abc', 3, [[3, 0]]]);
    const beyond = { file: at('stretches'), stretch: { start: 5, size: 3 } };
    assert.throws(() => openPicture(beyond), { reason: 'truncated' });
  });

  it('opens a file only where it holds what is meant, by either of git’s names for it', () => {
    fs.writeFileSync(at('small'), 'abc');
    fs.writeFileSync(at('large'), Buffer.alloc(9 << 20, 7));
    for (const name of ['small', 'large'])
      for (const format of ['sha1', 'sha256']) {
        const repository = fs.mkdtempSync(path.join(folder, 'repository-'));
        const git = (...args: string[]) =>
          execFileSync('git', ['-C', repository, ...args], { encoding: 'utf8' });
        git('init', '--quiet', `--object-format=${format}`);
        const oid = git('hash-object', at(name)).trim();
        const file = openPicture({ file: at(name), oid });
        const sha256 = createHash('sha256')
          .update(fs.readFileSync(at(name)))
          .digest('hex');
        assert.equal(file.sha256(), sha256);
        file.close();
        const other = oid.replace(/^./, digit => (digit === '0' ? '1' : '0'));
        assert.throws(() => openPicture({ file: at(name), oid: other }), OtherContent);
      }
  });

  const refuses = (name: string, reason: string, says: RegExp) =>
    assert.throws(() => openPicture({ file: at(name) }), { reason, text: says });

  it('says what is wrong with what cannot be opened', () => {
    fs.writeFileSync(at('empty'), '');
    refuses('empty', 'empty', /empty/);
    refuses('nothing-here', 'missing', /no such file/);
    fs.mkdirSync(at('folder'));
    refuses('folder', 'not-a-file', /a folder/);
  });

  it('never waits on pipes, sockets and devices', async () => {
    if (process.platform === 'win32') return;
    execFileSync('mkfifo', [at('pipe')]);
    refuses('pipe', 'not-a-file', /a pipe/);
    const server = net.createServer().listen(at('socket'));
    await new Promise(resolve => server.once('listening', resolve));
    refuses('socket', 'not-a-file', /a socket/);
    server.close();
    for (const device of ['/dev/zero', '/dev/null', '/dev/tty'])
      if (fs.existsSync(device))
        assert.throws(() => openPicture({ file: device }), { reason: 'not-a-file', text: /a device/ });
  });

  it('says where links and rights end', () => {
    if (process.platform === 'win32') return;
    fs.symlinkSync(at('b'), at('a'));
    fs.symlinkSync(at('a'), at('b'));
    refuses('a', 'missing', /circle/);
    if (process.getuid?.() === 0) return; // root may read everything
    fs.writeFileSync(at('secret'), 'x', { mode: 0 });
    refuses('secret', 'permission', /right to read/);
  });
});

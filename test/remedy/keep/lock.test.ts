import assert from 'node:assert/strict';
import { spawn, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { lock } from '../../../src/remedy/keep/lock';
import { startOf } from '../../../src/remedy/keep/running';
import { temporaryFolder } from '../../book/support/folder';

const claimFile = (folder: string, pid: number, host = os.hostname()) =>
  path.join(folder, `running-${host.replace(/[^\w-]/g, '_')}-${pid}.json`);
function claim(folder: string, pid: number, change: object = {}) {
  const content = { pid, host: os.hostname(), start: startOf(pid), ...change };
  fs.writeFileSync(claimFile(folder, pid), JSON.stringify(content));
}

describe('lock of a book', () => {
  it('is had, given back, and had again; nothing of it stays', async () => {
    const folder = temporaryFolder();
    for (let i = 0; i < 2; i++) {
      const unlock = await lock(folder);
      assert.equal(fs.readdirSync(folder).length, 1);
      await unlock();
    }
    assert.deepEqual(fs.readdirSync(folder), []);
  });

  it('leaves nothing where it cannot be written', async () => {
    const folder = temporaryFolder();
    fs.mkdirSync(claimFile(folder, process.pid));
    await assert.rejects(lock(folder), { code: 'EISDIR' });
    assert.deepEqual(fs.readdirSync(folder), [path.basename(claimFile(folder, process.pid))]);
  });

  it('is refused while another process that runs has it, which is named', async () => {
    const folder = temporaryFolder();
    const other = spawn('sleep', ['60']);
    try {
      claim(folder, other.pid!);
      await assert.rejects(lock(folder, 100), new RegExp(`process ${other.pid}\\).*Nothing was changed`));
      assert.equal(fs.readdirSync(folder).length, 1, 'its claim stays, ours is withdrawn');
    } finally {
      other.kill('SIGKILL');
    }
  });

  it('is taken over from a process that is gone', async () => {
    const folder = temporaryFolder();
    const { pid } = spawnSync('true');
    claim(folder, pid);
    await (await lock(folder, 0))();
    assert.deepEqual(fs.readdirSync(folder), []);
  });

  it('is taken over from a process whose number another has now', async () => {
    const folder = temporaryFolder();
    claim(folder, process.ppid, { start: '1' });
    await (await lock(folder, 0))();
  });

  it('is taken over from a run that was killed and had our own number', async () => {
    const folder = temporaryFolder();
    claim(folder, process.pid, { start: '1' });
    await (await lock(folder, 0))();
  });

  it('is never taken from another machine, but the file to delete is named', async () => {
    const folder = temporaryFolder();
    const { pid } = spawnSync('true');
    claim(folder, pid, { host: 'elsewhere' });
    await assert.rejects(lock(folder, 0), /on the machine "elsewhere".*delete ".*running-/);
  });

  it('is waited for', async () => {
    const folder = temporaryFolder();
    const unlock = await lock(folder);
    const second = lock(folder, 10_000);
    setTimeout(() => void unlock(), 100);
    await (await second)();
  });

  it('is had by one at a time, however many want it at once', async () => {
    const folder = temporaryFolder();
    let inside = 0;
    let most = 0;
    const work = async () => {
      const unlock = await lock(folder, 30_000);
      most = Math.max(most, ++inside);
      await new Promise(resolve => setTimeout(resolve, 5));
      inside--;
      await unlock();
    };
    await Promise.all(Array.from({ length: 8 }, work));
    assert.equal(most, 1);
  });
});

import assert from 'node:assert/strict';
import { type ChildProcess, fork, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { createPool } from '../../src/book/pool';
import type { PictureFacts } from '../../src/shared/picture';
import type { ReaderReply } from '../../src/shared/reader-protocol';
import { known } from './known';
import { mutated, seeded } from './mutate';

// the built reader, as it is shipped
const readerFile = path.resolve(process.env.EVENGREY_DIST ?? 'dist', 'reader.js');
const folder = 'test/picture/known';
const files = [...new Set(known.map(k => path.join(folder, k.file)))];
/** Ten thousand before a release. */
const MUTANTS = Number(process.env.EVENGREY_FUZZ ?? 300);

/** The facts of every file, in order; the messages about sizes are passed over. */
function allFacts(child: ChildProcess): Promise<PictureFacts[][]> {
  return new Promise((resolve, reject) => {
    const all: PictureFacts[][] = [];
    child.on('message', (reply: ReaderReply) => {
      if (!('ok' in reply)) return;
      if (!reply.ok || reply.kind !== 'facts') return reject(new Error(files[reply.id]));
      if (all.push(reply.facts!) === files.length) resolve(all);
    });
    child.once('exit', () => reject(new Error('the reader ended')));
    for (const [id, file] of files.entries()) child.send({ id, kind: 'facts', file });
  });
}

async function started(...args: string[]): Promise<ChildProcess> {
  const child = fork(readerFile, args, { serialization: 'advanced', execArgv: [] });
  const [hello] = await once(child, 'message');
  assert.deepEqual(hello, { kind: 'ready' });
  return child;
}

describe('reader', () => {
  it('reads the same on WebAssembly as natively', async function () {
    // WebAssembly is about five times slower, and machines are crowded
    this.timeout(300_000);
    const [native, wasm] = await Promise.all([started(), started('--wasm')]);
    try {
      const [a, b] = await Promise.all([allFacts(native), allFacts(wasm)]);
      assert.deepEqual(b, a);
    } finally {
      native.kill();
      wasm.kill();
    }
  });

  it('rehearses, and reads the same afterwards', async () => {
    const [rehearsed, fresh] = await Promise.all([started(), started()]);
    try {
      rehearsed.send({ id: 1, kind: 'rehearse' });
      const [reply] = await once(rehearsed, 'message');
      assert.deepEqual(reply, { id: 1, ok: true, kind: 'rehearse' });
      const [a, b] = await Promise.all([allFacts(rehearsed), allFacts(fresh)]);
      assert.deepEqual(a, b);
    } finally {
      rehearsed.kill();
      fresh.kill();
    }
  });

  it('ends with its parent', async () => {
    const child = await started();
    child.disconnect();
    const [code] = await once(child, 'exit');
    assert.equal(code, 0);
  });

  it('says so when it is started by hand', () => {
    const { status, stderr } = spawnSync(process.execPath, [readerFile], { encoding: 'utf8' });
    assert.equal(status, 2);
    assert.match(stderr, /not by hand/);
  });

  it('sends a picture for showing', async () => {
    const pool = createPool({ readerFile });
    try {
      const raster = await pool.raster({ file: path.join(folder, 'turned.tif') }, 1, 10);
      assert.deepEqual([raster.width, raster.height, raster.orientation], [6, 10, 6]);
      assert.equal(Buffer.from(raster.png).toString('latin1', 1, 4), 'PNG');
      await assert.rejects(
        pool.raster({ file: path.join(folder, 'picture.psd') }, 1, 10),
        /layered document/,
      );
    } finally {
      await pool.close();
    }
  });

  it(`has an answer for each of ${MUTANTS} damaged files, and never crashes`, async function () {
    this.timeout(60_000 + MUTANTS * 100);
    const temporary = fs.mkdtempSync(path.join(os.tmpdir(), 'mutants-'));
    const pool = createPool({ readerFile });
    const originals = files.map(file => fs.readFileSync(file));
    const read = async (n: number) => {
      const random = seeded(n);
      const file = path.join(temporary, `${n}`);
      fs.writeFileSync(file, mutated(originals[Math.floor(random() * originals.length)], random));
      const facts = await pool.facts(file);
      assert.ok(facts.length > 0, `mutant ${n}`);
      for (const { unreadable } of facts)
        assert.ok(
          unreadable?.reason !== 'crashed' && unreadable?.reason !== 'timeout',
          `mutant ${n}: ${unreadable?.text}`,
        );
      fs.rmSync(file);
    };
    try {
      for (let n = 0; n < MUTANTS; n += 2) await Promise.all([read(n), read(n + 1)]);
    } finally {
      await pool.close();
      fs.rmSync(temporary, { recursive: true });
    }
  });
});

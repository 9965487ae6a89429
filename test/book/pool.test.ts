import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { buildSync } from 'esbuild';
import { createPool, type Pool, type PoolOptions } from '../../src/book/pool';

/** A reader that does what the file's name says, and tells its process id in place of facts. */
const SCRIPT = `
const wasm = process.argv.includes('--wasm');
if (process.env.TEST_READER === 'dies' || (process.env.TEST_READER === 'dies-natively' && !wasm)) {
  console.error('no decoder here');
  process.exit(7);
}
process.on('disconnect', () => process.exit(0));
let rehearsing = false;
process.on('message', ({ id, kind, file }) => {
  if (kind === 'rehearse') {
    require('node:fs').appendFileSync(__filename + '.rehearsed', process.pid + ' ');
    rehearsing = true;
    return setTimeout(() => {
      if (process.env.TEST_READER === 'dies-rehearsing') process.kill(process.pid, 'SIGSEGV');
      rehearsing = false;
      process.send({ id, ok: true, kind });
    }, 100);
  }
  if (rehearsing) return process.send({ id, ok: false, message: 'not yet' });
  const name = require('node:path').basename(file);
  if (name === 'crash' || (name === 'crash-natively' && !wasm)) process.kill(process.pid, 'SIGSEGV');
  if (name === 'killed-once' && !require('node:fs').existsSync(file + '.was')) {
    require('node:fs').writeFileSync(file + '.was', '');
    process.kill(process.pid, 'SIGKILL');
  }
  if (name === 'hang') return;
  if (name === 'fails') return process.send({ id, ok: false, message: 'a reason' });
  const answer = () => process.send(kind === 'facts'
    ? { id, ok: true, kind, facts: [{ page: 1, pid: process.pid, wasm, name }] }
    : { id, ok: true, kind, raster: { width: 1, height: 1, png: new Uint8Array([1, 2]) } });
  if (name === 'large') process.send({ id, kind: 'size', megabytes: 0, megapixels: 1000 });
  setTimeout(answer, { slow: 300, 'very-slow': 1500, large: 1500 }[name] ?? 0);
});
require('node:fs').appendFileSync(__filename + '.started', process.pid + ' ');
process.send({ kind: 'ready' });
`;

/** Closes a pool whose reader has said that it is ready, which this process has not heard yet. */
const CLOSES = `
import { createPool } from './src/book/pool';
const pool = createPool({ readerFile: process.argv[2], size: 1 });
pool.warm(1);
Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 1000);
pool.close().then(() => console.log('closed'));
`;

interface Told {
  pid: number;
  wasm: boolean;
  name: string;
}

describe('pool', () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'pool-'));
  const readerFile = path.join(folder, 'reader.cjs');
  let pool: Pool;

  function open(options: Partial<PoolOptions> = {}): Pool {
    pool = createPool({ readerFile, size: 2, ...options });
    return pool;
  }
  const told = async (name: string, signal?: AbortSignal) =>
    (await pool.facts(path.join(folder, name), signal))[0] as unknown as Told;
  const pidsIn = (file: string) =>
    fs.existsSync(file) ? fs.readFileSync(file, 'utf8').trim().split(' ').map(Number) : [];
  const started = () => pidsIn(`${readerFile}.started`);
  const rehearsed = () => pidsIn(`${readerFile}.rehearsed`);
  const unreadable = async (name: string) => (await pool.facts(path.join(folder, name)))[0].unreadable;

  before(() => fs.writeFileSync(readerFile, SCRIPT));
  afterEach(async () => {
    delete process.env.TEST_READER;
    await pool.close();
    for (const noted of ['started', 'rehearsed']) fs.rmSync(`${readerFile}.${noted}`, { force: true });
  });
  after(() => fs.rmSync(folder, { recursive: true }));

  it('answers for every file, over at most as many readers as it has lanes', async () => {
    open();
    const answers = await Promise.all(Array.from({ length: 20 }, (_, i) => told(`f${i}`)));
    assert.deepEqual(
      answers.map(a => a.name),
      Array.from({ length: 20 }, (_, i) => `f${i}`),
    );
    assert.equal(new Set(answers.map(a => a.pid)).size, 2);
  });

  it('starts no reader before it is asked', async () => {
    open({ readerFile: path.join(folder, 'there-is-none.cjs') });
    await pause(50);
    await assert.rejects(told('a'), /could not be started/);
  });

  it('names a file that crashes every reader, and goes on', async () => {
    open();
    const [bad, good] = await Promise.all([unreadable('crash'), told('a')]);
    assert.equal(bad?.reason, 'crashed');
    assert.match(bad!.text, /export it again/);
    assert.equal(good.name, 'a');
    assert.equal((await told('b')).wasm, false, 'one bad file does not slow the others down');
  });

  it('tries a second time where a reader was killed from outside', async () => {
    open();
    assert.equal((await told('killed-once')).name, 'killed-once');
  });

  it('loses at most one file when a reader is killed in the middle of a book', async () => {
    open();
    const { pid } = await told('first');
    const book = Array.from({ length: 10 }, () => pool.facts(path.join(folder, 'slow')));
    await pause(150);
    process.kill(pid, 'SIGKILL');
    const lost = (await Promise.all(book)).filter(facts => facts[0].unreadable);
    assert.ok(lost.length <= 1);
  });

  it('reads a second time on WebAssembly what crashed the native decoder', async () => {
    open({ size: 1 });
    await told('a');
    assert.equal((await told('crash-natively')).wasm, true);
    assert.equal((await told('b')).wasm, false);
  });

  it('stays on WebAssembly where the native decoder never answered before it crashed', async () => {
    open({ size: 1 });
    assert.equal((await told('crash-natively')).wasm, true);
    assert.equal((await told('b')).wasm, true);
  });

  it('starts on WebAssembly where the native decoder does not load', async () => {
    process.env.TEST_READER = 'dies-natively';
    open();
    const answers = await Promise.all([told('a'), told('b'), told('c')]);
    assert.deepEqual(
      answers.map(a => a.wasm),
      [true, true, true],
    );
  });

  it('says what the reader said where none can be started', async () => {
    process.env.TEST_READER = 'dies';
    open();
    await assert.rejects(told('a'), /could not be started. no decoder here/);
  });

  it('gives up on a file that hangs, and names it', async () => {
    open({ patience: 0.2 });
    const [hung, good] = await Promise.all([unreadable('hang'), told('a')]);
    assert.equal(hung?.reason, 'timeout');
    assert.match(hung!.text, /no answer within 0.8 seconds/);
    assert.equal(good.name, 'a');
  });

  it('waits longer for a large picture', async () => {
    open({ patience: 0.2 });
    assert.equal((await told('large')).name, 'large');
    assert.equal((await unreadable('very-slow'))?.reason, 'timeout');
  });

  it('names a file that the reader has no facts of', async () => {
    open();
    const bad = await unreadable('fails');
    assert.equal(bad?.reason, 'crashed');
    assert.match(bad!.text, /a reason/);
  });

  it('asks the reader again that read a file last, if it is idle', async () => {
    open({ size: 2 });
    const [a, b] = await Promise.all([told('a'), told('slow')]);
    assert.notEqual(a.pid, b.pid);
    for (const [name, { pid }] of [
      ['a', a],
      ['slow', b],
      ['a', a],
    ] as const)
      assert.equal((await told(name)).pid, pid, name);
  });

  it('lets a waiting file be cancelled without reading it', async () => {
    open({ size: 1 });
    const stop = new AbortController();
    const first = told('slow');
    const second = told('a', stop.signal);
    const third = told('b');
    stop.abort();
    await assert.rejects(second, { name: 'AbortError' });
    assert.equal((await first).name, 'slow');
    assert.equal((await third).name, 'b');
    await assert.rejects(told('c', stop.signal), { name: 'AbortError' });
  });

  it('lets nobody wait for a cancelled file, and keeps its reader', async () => {
    open({ size: 1 });
    const { pid } = await told('a');
    const stop = new AbortController();
    const running = told('slow', stop.signal);
    setTimeout(() => stop.abort(), 50);
    await assert.rejects(running, { name: 'AbortError' });
    assert.equal((await told('b')).pid, pid);
  });

  it('shows a picture before it goes on judging', async () => {
    open({ size: 1 });
    const order: string[] = [];
    await Promise.all([
      told('a').then(() => order.push('a')),
      told('b').then(() => order.push('b')),
      pool
        .raster({ file: path.join(folder, 'p') }, 1, 100)
        .then(raster => order.push(`raster ${raster.png.length}`)),
    ]);
    assert.deepEqual(order, ['a', 'raster 2', 'b']);
  });

  it('ends readers that have nothing to do, and starts again when there is', async () => {
    open({ size: 1, idleSeconds: 0.05 });
    const { pid } = await told('a');
    await pause(400);
    assert.throws(() => process.kill(pid, 0), 'the process is gone');
    assert.notEqual((await told('b')).pid, pid);
  });

  it('has a fresh reader stand by in their place, where one is wanted', async () => {
    open({ size: 1, idleSeconds: 0.05, spare: true });
    const { pid } = await told('a');
    while (started().length < 2) await pause(20);
    await pause(100);
    assert.throws(() => process.kill(pid, 0), 'the one that worked is gone');
    assert.equal((await told('b')).pid, started()[1]);
  });

  it('has one stand by from the start, where that is wanted, and keeps it while nothing is asked', async () => {
    open({ size: 2, idleSeconds: 0.05, spare: true });
    pool.warm(1);
    pool.warm(1);
    while (!rehearsed().length) await pause(20);
    await pause(400);
    assert.equal((await told('a')).pid, started()[0]);
    assert.deepEqual(rehearsed(), started());
  });

  it('gives a reader that rehearses its first task when it is done', async () => {
    open({ size: 1, spare: true });
    pool.warm(1);
    while (!rehearsed().length) await pause(5);
    assert.equal((await told('a')).pid, rehearsed()[0]);
    assert.equal(started().length, 1);
  });

  it('has no reader rehearse that is wanted before it is ready, nor one that no spare is to be', async () => {
    open({ size: 1, spare: true });
    pool.warm(1);
    assert.equal((await told('a')).pid, started()[0]);
    await pool.close();
    open({ size: 1 });
    pool.warm(1);
    while (started().length < 2) await pause(20);
    await pause(100);
    assert.equal((await told('b')).pid, started()[1]);
    assert.deepEqual(rehearsed(), []);
  });

  it('starts another where the one that stood by was killed, or ended over its rehearsal', async () => {
    open({ size: 1, spare: true });
    pool.warm(1);
    while (!rehearsed().length) await pause(20);
    process.kill(rehearsed()[0], 'SIGKILL');
    assert.equal((await told('a')).pid, started()[1]);
    await pool.close();
    process.env.TEST_READER = 'dies-rehearsing';
    open({ size: 1, spare: true });
    pool.warm(1);
    while (rehearsed().length < 2) await pause(20);
    const { pid, wasm } = await told('b');
    assert.equal(pid, started()[3]);
    assert.equal(wasm, false);
  });

  it('has another stand by at the next call, where the one that had nothing to do was killed', async () => {
    open({ size: 1, spare: true, idleSeconds: 1000 });
    process.kill((await told('first')).pid, 'SIGKILL');
    while (started().length < 2) {
      await pause(20);
      pool.warm(1);
    }
    assert.equal((await told('a')).pid, started()[1]);
  });

  it('starts its readers ahead of work, no more of them than work at a time', async () => {
    open({ size: 2 });
    pool.warm(2);
    pool.warm(3);
    const early = await told('a');
    while (started().length < 2) await pause(20);
    await pause(100);
    const [a, b] = await Promise.all([told('slow'), told('b')]);
    assert.equal(started().length, 2);
    assert.deepEqual([a.pid, b.pid].sort(), started().sort());
    assert.ok(started().includes(early.pid));
  });

  it('ends readers that were started ahead and got no work', async () => {
    open({ size: 1, idleSeconds: 0.05 });
    pool.warm(1);
    while (!started().length) await pause(20);
    await pause(400);
    assert.throws(() => process.kill(started()[0], 0), 'the process is gone');
    assert.equal((await told('a')).name, 'a');
  });

  it('rejects what waits and ends its readers when closed', async () => {
    open({ size: 1 });
    const { pid } = await told('a');
    const running = told('slow');
    const waiting = told('b');
    const both = Promise.allSettled([running, waiting]);
    await pause(20);
    await pool.close();
    for (const outcome of await both) assert.equal(outcome.status, 'rejected');
    assert.throws(() => process.kill(pid, 0));
    await assert.rejects(told('c'), /closed/);
  });

  it('waits for the end of a reader that gets ready in that moment, though nothing else keeps the process', () => {
    const program = path.join(folder, 'closes.cjs');
    buildSync({
      stdin: { contents: CLOSES, resolveDir: process.cwd() },
      ...{ bundle: true, platform: 'node', outfile: program, logLevel: 'error' },
    });
    assert.equal(execFileSync(process.execPath, [program, readerFile], { encoding: 'utf8' }), 'closed\n');
  });
});

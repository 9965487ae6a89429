import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { Cancelled, CheckerClient } from '../../src/editor/checker-client';

/** A program that answers like the checker, without a picture: what it does is said by the rule's name it is asked. */
const program = `
const fs = require('node:fs');
process.on('message', ({ id, question, rule }) => {
  if (question === 'cancel') return fs.appendFileSync(process.argv[1] + '.cancelled', id + ' ');
  if (rule === 'progress') process.send({ id, progress: { done: 1, total: 2 } });
  if (rule === 'refuse') return process.send({ id, ok: false, message: 'no such rule', cancelled: false });
  if (rule === 'never') return;
  if (rule === 'die') process.kill(process.pid, 'SIGKILL');
  if (rule === 'die once' && !fs.existsSync(process.argv[1] + '.died')) {
    fs.writeFileSync(process.argv[1] + '.died', '');
    process.kill(process.pid, 'SIGKILL');
  }
  process.send({ id, ok: true, answer: rule + ' by ' + process.pid });
});
process.on('disconnect', () => process.exit());
`;

describe('checker client', () => {
  let dir: string;
  let client: CheckerClient;
  const ask = (rule: string, options = {}) => client.ask('page', { rule }, options);

  beforeEach(() => {
    dir = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-client-'));
    fs.writeFileSync(path.join(dir, 'checker.js'), program);
    client = new CheckerClient(path.join(dir, 'checker.js'), () => {});
  });
  afterEach(() => {
    client.dispose();
    fs.rmSync(dir, { recursive: true });
  });

  it('starts one process for many questions', async () => {
    const [first, second] = await Promise.all([ask('a'), ask('b')]);
    assert.equal(first.replace('a by ', ''), second.replace('b by ', ''));
  });

  it('passes on progress and the checker’s own words when it refuses', async () => {
    const seen: unknown[] = [];
    await ask('progress', { onProgress: (p: unknown) => seen.push(p) });
    assert.deepEqual(seen, [{ done: 1, total: 2 }]);
    await assert.rejects(ask('refuse'), { message: 'no such rule' });
  });

  it('asks again when the process is killed, and says so when that happens twice', async () => {
    assert.match(await ask('die once'), /^die once by \d+$/);
    await assert.rejects(ask('die'), { message: 'the checking process ended (SIGKILL)' });
    assert.match(await ask('after'), /^after by/);
  });

  it('settles a question that is cancelled, and tells the process', async () => {
    const cancel = new AbortController();
    const answer = ask('never', { signal: cancel.signal });
    cancel.abort();
    await assert.rejects(answer, Cancelled);
    await ask('later');
    assert.match(fs.readFileSync(path.join(dir, 'checker.js.cancelled'), 'utf8'), /1/);
    await assert.rejects(ask('too late', { signal: AbortSignal.abort() }), Cancelled);
  });

  it('settles what is under way when it is disposed', async () => {
    const answer = ask('never');
    client.dispose();
    await assert.rejects(answer, Cancelled);
    await assert.rejects(ask('a'), Cancelled);
  });

  it('lets an idle process go', async () => {
    client.dispose();
    client = new CheckerClient(path.join(dir, 'checker.js'), () => {}, 10);
    const first = await ask('a');
    const pid = Number(first.split(' ').at(-1));
    while (alive(pid)) await new Promise(resolve => setTimeout(resolve, 20));
    assert.notEqual(await ask('a'), first);
  });

  it('does not while somebody keeps it', async () => {
    client.dispose();
    client = new CheckerClient(path.join(dir, 'checker.js'), () => {}, 10);
    const kept = client.keep();
    const first = await ask('a');
    await new Promise(resolve => setTimeout(resolve, 200));
    assert.equal(await ask('a'), first);
    kept.dispose();
    const pid = Number(first.split(' ').at(-1));
    while (alive(pid)) await new Promise(resolve => setTimeout(resolve, 20));
  });
});

function alive(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}

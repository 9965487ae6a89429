import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { Cancelled, CheckerClient, type Later } from '../../src/editor/checker-client';

/** A program that answers like the checker, without a picture: what it does is said by the rule's name it is asked. */
const program = `
const fs = require('node:fs');
fs.appendFileSync(process.argv[1] + '.started', process.pid + ' ');
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

  describe('without anything to do', () => {
    /** What is to be done later: never by itself, but when the test says that the time has come. */
    let due: Set<() => void>;
    const later: Later = (_ms, work) => {
      due.add(work);
      return () => due.delete(work);
    };
    const timePasses = () => {
      for (const work of due) work();
    };
    const pidOf = (answer: string) => Number(answer.split(' ').at(-1));
    const gone = async (pid: number) => {
      while (alive(pid)) await new Promise(resolve => setTimeout(resolve, 20));
    };

    beforeEach(() => {
      due = new Set();
      client = new CheckerClient(path.join(dir, 'checker.js'), () => {}, later);
    });

    it('lets the process go after a while, and starts another when it is asked', async () => {
      const pid = pidOf(await ask('a'));
      assert.equal(due.size, 1);
      timePasses();
      await gone(pid);
      assert.notEqual(pidOf(await ask('a')), pid);
    });

    it('counts from the last answer, and not while one is waited for', async () => {
      await ask('a');
      const [first] = due;
      const cancel = new AbortController();
      const never = ask('never', { signal: cancel.signal });
      assert.equal(due.size, 0);
      await ask('b');
      assert.equal(due.size, 0);
      cancel.abort();
      await assert.rejects(never, Cancelled);
      assert.equal(due.size, 1);
      assert.ok(!due.has(first));
    });

    it('never lets it go while a book keeps it', async () => {
      const pid = pidOf(await ask('a'));
      const [one, two] = [client.keep(), client.keep()];
      timePasses();
      assert.equal(pidOf(await ask('b')), pid);
      one.dispose();
      timePasses();
      assert.equal(pidOf(await ask('c')), pid);
      two.dispose();
      timePasses();
      await gone(pid);
    });

    it('starts none for being kept', async () => {
      client.keep();
      const asked = new CheckerClient(path.join(dir, 'checker.js'), () => {});
      const answer = await asked.ask('page', { rule: 'a' });
      asked.dispose();
      // whatever was started before that one has said so by now
      assert.equal(fs.readFileSync(path.join(dir, 'checker.js.started'), 'utf8'), `${pidOf(answer)} `);
    });

    it('starts another for what is asked next, where the one that is kept was killed', async () => {
      client.keep();
      const pid = pidOf(await ask('a'));
      process.kill(pid, 'SIGKILL');
      await gone(pid);
      assert.notEqual(pidOf(await ask('b')), pid);
    });

    it('leaves no process behind, kept or not', async () => {
      client.keep();
      const pid = pidOf(await ask('a'));
      client.dispose();
      await gone(pid);
      assert.equal(due.size, 0);
    });
  });
});

function alive(pid: number): boolean {
  try {
    return process.kill(pid, 0);
  } catch {
    return false;
  }
}

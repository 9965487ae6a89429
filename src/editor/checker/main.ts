// no-unit-test: it joins parts that have their own tests; test/e2e/suites/ tests it as a process
import path from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { createPool } from '../../book/pool';
import type { CheckerMessage, CheckerRequest } from '../../shared/checker-protocol';
import { Checker } from './checker';

/**
 * The checker process: answers the editor's questions, one message each, and ends with the editor. While a book rests it
 * stays, and of its readers one that has read nothing yet: on Linux with Node 20 some 110 and 80 MB resident in a book of
 * 500 pictures, 70 and 35 MB where what they share with others counts by its part; `npm run bench:editor` says it anew.
 */
const readerFile = path.join(__dirname, 'reader.js');
const pool = createPool({ readerFile, spare: true });
const checker = new Checker(pool, readerFile);
const running = new Map<number, AbortController>();
/** A conversion that is stopped ends in good order. */
const work = new Set<Promise<void>>();
/** An editor that is gone waits for nobody: what is not done by then is made good by the next conversion. */
const LAST_WORK_MS = 3000;

process.on('message', (request: CheckerRequest) => {
  if (request.question === 'cancel') return running.get(request.id)?.abort();
  const answered = answer(request).finally(() => work.delete(answered));
  work.add(answered);
});

async function answer(request: Exclude<CheckerRequest, { question: 'cancel' }>): Promise<void> {
  const { id } = request;
  const cancel = new AbortController();
  running.set(id, cancel);
  try {
    const answer = await checker.answer(request, cancel.signal, progress => send({ id, progress }));
    send({ id, ok: true, answer });
  } catch (error) {
    send({
      id,
      ok: false,
      message: error instanceof Error ? error.message : String(error),
      cancelled: cancel.signal.aborted,
    });
  } finally {
    running.delete(id);
  }
}

process.on('disconnect', async () => {
  for (const cancel of running.values()) cancel.abort();
  await Promise.race([Promise.all(work), setTimeout(LAST_WORK_MS)]);
  await Promise.all([pool.close(), checker.close()]);
  process.exit(0);
});

/** An editor that is gone hears nothing: `disconnect` follows. */
function send(message: CheckerMessage) {
  process.send!(message, () => {});
}

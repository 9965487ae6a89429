// no-unit-test: test/picture/reader.test.ts and test/remedy/converter.test.ts run the built programs that serve by it
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import type { ChildReply, ChildRequest } from '../shared/child-protocol';
import type { OnSize } from './open';

/** Buffers of large pictures lie outside the heap, where the collector does not see them pile up. */
const LARGE_MEGAPIXELS = 8;

/**
 * Makes this process a child that works for a pool: one task at a time, in the order they come, and it ends with its
 * parent. What `work` throws is told as the task's failure.
 */
export function serve<Task extends object, Done extends object>(
  work: (task: Task, onSize: OnSize) => Promise<Done>,
): void {
  setFlagsFromString('--expose-gc');
  const collect = runInNewContext('gc') as () => void;
  const send = (reply: ChildReply<Done>) => process.send?.(reply);

  async function answer({ id, ...rest }: ChildRequest<Task>): Promise<void> {
    let large = false;
    const onSize: OnSize = (bytes, megapixels) => {
      large = megapixels > LARGE_MEGAPIXELS;
      send({ id, kind: 'size', megabytes: bytes / 2 ** 20, megapixels });
    };
    try {
      send({ id, ok: true, ...(await work(rest as unknown as Task, onSize)) });
    } catch (error) {
      const { message = String(error), code } = error as NodeJS.ErrnoException;
      send({ id, ok: false, message, code });
    }
    if (large) collect();
  }

  if (!process.send) {
    process.stderr.write('This part of evengrey is started by evengrey itself, not by hand.\n');
    process.exitCode = 2;
    return;
  }
  let last: Promise<void> = Promise.resolve();
  process.on('message', (request: ChildRequest<Task>) => {
    last = last.then(() => answer(request));
  });
  process.on('disconnect', () => process.exit(0));
  send({ kind: 'ready' });
}

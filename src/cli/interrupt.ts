// no-unit-test: test/cli/accidents.test.ts sends the signals to the built program
import { setMaxListeners } from 'node:events';
import { EXIT } from './failure';

/** A person or the system ended the work. */
export class Interrupted extends Error {
  override name = 'Interrupted';
  constructor(
    readonly exitCode: number,
    message: string,
  ) {
    super(message);
  }
}

/**
 * Runs work that can be stopped: the first Ctrl-C (or termination) aborts its signal, so that it ends in good order;
 * the second ends the process at once.
 * @param message said when it was stopped: what became of it
 */
export async function interruptible<T>(
  work: (signal: AbortSignal) => Promise<T>,
  message = 'Stopped.',
): Promise<T> {
  const controller = new AbortController();
  setMaxListeners(0, controller.signal); // every picture that waits for a reader listens
  const stop = (name: NodeJS.Signals) => {
    const code = name === 'SIGINT' ? EXIT.interrupted : EXIT.terminated;
    if (controller.signal.aborted) process.exit(code);
    controller.abort(new Interrupted(code, message));
  };
  process.on('SIGINT', stop).on('SIGTERM', stop);
  try {
    return await work(controller.signal);
  } finally {
    process.off('SIGINT', stop).off('SIGTERM', stop);
  }
}

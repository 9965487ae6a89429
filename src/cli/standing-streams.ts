// no-unit-test: test/cli/accidents.test.ts runs the built program where nobody reads, and where the disk is full
import { EXIT } from './failure';

/**
 * Watches the two standing streams: what cannot be written ends in a sentence and a code, never in a trace. The answer says
 * whether the result went astray.
 */
export function watchStreams({ stdout, stderr } = process): { lost: boolean } {
  const result = { lost: false };
  stdout.on('error', (error: NodeJS.ErrnoException) => {
    // whoever reads us may have read enough (`evengrey check | head`): what is judged holds all the same
    if (error.code === 'EPIPE' || result.lost) return;
    result.lost = true;
    // help is written after all else is done
    process.exitCode = EXIT.failure;
    stderr.write(
      `evengrey: The result cannot be written: ${reasonOf(error)}. What came of it is not whole.\n`,
    );
  });
  // nobody is left who could be told; the code says it
  stderr.on('error', () => {});
  return result;
}

const reasonOf = ({ code, message }: NodeJS.ErrnoException) =>
  code === 'ENOSPC' ? 'there is no room left where it goes' : message;

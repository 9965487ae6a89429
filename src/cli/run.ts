// no-unit-test: test/cli/usage.test.ts and test/cli/accidents.test.ts run the built program
import { CommanderError } from 'commander';
import { EXIT, Failure } from './failure';
import { Interrupted } from './interrupt';
import { program } from './program';
import { watchStreams } from './standing-streams';

/** Runs the command line and sets the exit code; nothing is thrown. */
export async function run(argv: readonly string[]): Promise<void> {
  const result = watchStreams();
  // a process that runs out of things to wait for ends in silence: that must not look like a clean book
  process.exitCode = EXIT.failure;
  try {
    await program().parseAsync(argv);
  } catch (error) {
    process.exitCode = told(error);
  }
  if (result.lost) process.exitCode = EXIT.failure;
}

/** Says what went wrong, if it was not said yet, and gives the exit code. */
function told(error: unknown): number {
  // commander has said it itself
  if (error instanceof CommanderError) return error.exitCode === 0 ? EXIT.clean : EXIT.failure;
  if (error instanceof Interrupted) {
    process.stderr.write(`${error.message}\n`);
    return error.exitCode;
  }
  if (error instanceof Failure) process.stderr.write(`evengrey: ${error.message}\n`);
  else {
    const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
    process.stderr.write(`evengrey: this went wrong, and it is our fault, not yours:\n${trace}\n`);
  }
  return EXIT.failure;
}

// no-unit-test: test/cli/actions runs the built program on books of every kind
import path from 'node:path';
import { findRoot, RootError } from '../book/root';
import { loadSettings } from '../book/settings/load';
import { describeProblem } from '../book/settings/problem';
import type { Settings } from '../book/settings/settings';
import { Failure } from './failure';

/**
 * A path that somebody named, absolute. @throws Failure for an empty one: most often a variable of a script that is not
 * set, and the folder one happens to be in is not what was meant
 */
export function named(name: string): string {
  if (name === '')
    throw new Failure('An empty path was named. Name a folder or a picture; "." is the folder you are in.');
  return path.resolve(name);
}

/** The folder of the book that paths (absolute) belong to. @throws Failure where that is none, or several */
export async function rootOf(paths: readonly string[]): Promise<string> {
  try {
    return await findRoot(paths);
  } catch (error) {
    throw error instanceof RootError ? new Failure(error.message) : error;
  }
}

/**
 * The settings, and the files that they came from, the book's own first.
 * @param done what was not done where they cannot be used: `checked`
 * @throws Failure with every problem in them
 */
export async function settingsOf(
  root: string,
  file: string | undefined,
  done: string,
): Promise<{ settings: Settings; files: string[] }> {
  const { settings, problems, files } = await loadSettings(root, {
    file: file === undefined ? undefined : named(file),
  });
  if (settings) return { settings, files };
  const what = problems.length === 1 ? 'a problem' : `${problems.length} problems`;
  throw new Failure(
    `The settings have ${what}, so nothing was ${done}.\n${problems.map(problem => describeProblem(problem, root, process.cwd())).join('\n')}`,
    { problems },
  );
}

/** A path as the person who named it sees it. */
export const shown = (file: string) => `"${path.relative(process.cwd(), file) || '.'}"`;

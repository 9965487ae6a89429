// no-unit-test: test/cli/actions runs the built program on books of every kind
import fs from 'node:fs/promises';
import path from 'node:path';
import { booksBelow, findRoot, RootError } from '../book/root';
import { loadSettings, SETTINGS_FILE } from '../book/settings/load';
import { describeProblem } from '../book/settings/problem';
import type { Settings } from '../book/settings/settings';
import type { Done } from '../report/trouble';
import { list } from '../rules/words';
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
 * Named paths without settings above them are one book only where no other lies below: each was to be judged by its own
 * settings, and not beside the pictures of another; a tone that its settings mean must not be taken for a cast. @throws Failure that names those books
 */
export async function oneBook(
  root: string,
  paths: readonly string[],
  done: Done | 'converted',
): Promise<void> {
  if (await isThere(path.join(root, SETTINGS_FILE))) return;
  const books = (await booksBelow(root, paths)).map(book => shown(path.join(root, book)));
  if (!books.length) return;
  const [below, would] =
    books.length === 1
      ? ['a book lies', 'its settings would not hold']
      : [`${books.length} different books lie`, `they would be ${JUDGED[done]} as one, by settings of none`];
  throw new Failure(
    `${shown(root)} has no evengrey.json, and ${below} below it (settings in ${list(books, NAMED)}). Nothing was ${done}, since ${would}. ${ONE_BOOK[done]}, as ${books[0]}. If all of it is one book, put an evengrey.json above the others: {} is enough.`,
  );
}

const JUDGED = { checked: 'judged', compared: 'judged', converted: 'converted' };

const ONE_BOOK = {
  checked: 'Check one book at a time: name its folder',
  compared: 'Compare one book at a time: name its folder with --book',
  converted: 'Convert one book at a time: name its folder',
};

/** So many books are named. */
const NAMED = 5;

const isThere = (file: string): Promise<boolean> =>
  fs.lstat(file).then(
    () => true,
    () => false,
  );

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

import fs from 'node:fs/promises';
import path from 'node:path';
import { discover } from './discovery/discover';
import { SETTINGS_FILE } from './settings/load';
import { isWithin } from './settings/within';

/** Named paths that cannot be one book. The message says what to do. */
export class RootError extends Error {
  override name = 'RootError';
}

/**
 * The folder of the book that the named paths (absolute) belong to: that of the nearest `evengrey.json` upward, else
 * the folder they have in common. Never the working directory as such, and never that of a repository.
 * @throws RootError where a path does not exist, or where they belong to several books.
 */
export async function findRoot(paths: readonly string[]): Promise<string> {
  const folders: string[] = [];
  for (const file of paths) {
    const stat = await fs.lstat(file).catch(() => null);
    if (!stat) throw new RootError(`There is no file or folder "${shown(file)}".`);
    const isFolder = stat.isDirectory() || (stat.isSymbolicLink() && (await isFolderBehind(file)));
    folders.push(isFolder ? file : path.dirname(file));
  }
  const books = await Promise.all(folders.map(nearestSettings));
  const first = books[0];
  const other = books.findIndex(book => book !== first);
  if (other !== -1)
    throw new RootError(
      `"${shown(paths[0])}" and "${shown(paths[other])}" belong to different books (${of(first)}, ${of(books[other])}). Check one book at a time.`,
    );
  return first ?? commonFolder(folders);
}

/**
 * The folders of the books that lie below named paths (absolute), relative to `root`, sorted: where `evengrey.json` is, but
 * in hidden and ignored folders. Meant for a root without settings of its own, which would mix their pictures.
 */
export async function booksBelow(
  root: string,
  paths: readonly string[],
  signal?: AbortSignal,
): Promise<string[]> {
  const isSettings = (file: string) => path.posix.basename(file) === SETTINGS_FILE;
  const search = { root, paths, settings: { pictures: null, ignore: [] }, wanted: isSettings, signal };
  const { files } = await discover(search);
  return files.flatMap(({ path: file }) => (isSettings(file) ? path.posix.dirname(file) : []));
}

async function nearestSettings(folder: string): Promise<string | null> {
  for (let at = folder; ; at = path.dirname(at)) {
    // lstat: what must not be opened under this name is told by the settings, not passed over
    if (await fs.lstat(path.join(at, SETTINGS_FILE)).catch(() => null)) return at;
    if (path.dirname(at) === at) return null;
  }
}

function commonFolder(folders: readonly string[]): string {
  let common = folders[0];
  for (const folder of folders) while (!isWithin(common, folder)) common = path.dirname(common);
  return common;
}

const isFolderBehind = (link: string) =>
  fs.stat(link).then(
    stat => stat.isDirectory(),
    () => false,
  );

const shown = (file: string) => path.relative(process.cwd(), file) || '.';
const of = (book: string | null) => (book ? `settings in "${shown(book)}"` : 'no settings');

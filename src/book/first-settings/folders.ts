import path from 'node:path';
import { discover } from '../discovery/discover';
import { placementsOf, resolvedLayouts } from '../layouts';
import { noSettings } from '../settings/settings';

/** Below a root, relative to it; '' is the root itself. */
export interface BookCandidate {
  path: string;
  pictures: number;
}

/**
 * The folders that first settings may be for, in a folder (absolute) that has none: itself, and where its folders could as
 * well be a book each, those after it. With books in it, each topmost folder with pictures that holds none of theirs.
 */
export async function bookFoldersIn(root: string, signal?: AbortSignal): Promise<BookCandidate[]> {
  const { files, innerBooks = [] } = await discover({ root, paths: [root], settings: noSettings, signal });
  const pictures = files.map(file => file.path);
  if (innerBooks.length) {
    const free = pictures.filter(picture => !innerBooks.some(book => isIn(book, picture)));
    return counted(free.map(picture => foldersOf(picture).find(folder => !holds(folder, innerBooks))));
  }
  const whole = { path: '', pictures: pictures.length };
  const tops = counted(pictures.map(topOf));
  if (tops.length < 2 || tops.some(top => top.path === '')) return [whole];
  const { placements } = placementsOf(await resolvedLayouts(root, noSettings, { signal }));
  const joined = placements.some(({ file, picture }) => topOf(file) !== topOf(picture));
  return joined ? [whole] : [whole, ...tops];
}

const isIn = (folder: string, file: string) => folder === '' || file.startsWith(`${folder}/`);

const holds = (folder: string, books: readonly string[]) =>
  books.some(book => book === folder || isIn(folder, book));

/** From the root's own, '', to the one that it lies in. */
function foldersOf(file: string): string[] {
  const names = path.posix.dirname(file).split('/');
  return ['', ...names.map((_, depth) => names.slice(0, depth + 1).join('/'))].filter(name => name !== '.');
}

const topOf = (file: string): string => foldersOf(file)[1] ?? '';

/** Each folder once, with how often it is named. */
function counted(folders: readonly (string | undefined)[]): BookCandidate[] {
  const counts = new Map<string, number>();
  for (const folder of folders) if (folder !== undefined) counts.set(folder, (counts.get(folder) ?? 0) + 1);
  return [...counts].map(([folder, pictures]) => ({ path: folder, pictures }));
}

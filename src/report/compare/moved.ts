import { count } from '../../rules/words';
import type { PictureChange } from '../../shared/comparison';
import { facesOthers } from './arranged';
import { leavesBlank } from './blank';

/** Stands over the lines of it. */
export const MOVED = 'Moved to another folder, otherwise as before';

/** So many that went the same way are told in one line. Own choice. */
const TOGETHER = 3;

/**
 * Unchanged pictures that went from one folder to another under the same names, of which nothing else is to be told: a line
 * for all that went the same way; `others`: all other changes.
 */
export function movedTogether(changes: readonly PictureChange[]): {
  lines: string[];
  others: PictureChange[];
} {
  const ways = new Map<string, PictureChange[]>();
  for (const change of changes) {
    const way = wayOf(change);
    if (way) ways.set(way, [...(ways.get(way) ?? []), change]);
  }
  const together = [...ways].filter(([, group]) => group.length >= TOGETHER);
  const told = new Set(together.flatMap(([, group]) => group));
  return {
    lines: together.map(([way, group]) => `${count(group.length, 'picture')} moved ${way}`),
    others: changes.filter(change => !told.has(change)),
  };
}

/** `from kiste-6/ to kiste-7/`, by the folders that are called otherwise; null where more than that is to be told. */
function wayOf(change: PictureChange): string | null {
  const { kind, path, from, swapped, modes, pages } = change;
  const isNews = pages.some(({ findings }) => findings.new.length || findings.ended.length);
  if (kind !== 'renamed' || from === null || swapped || modes) return null;
  if (isNews || leavesBlank(change) || facesOthers(change)) return null;
  const [was, is] = [from, path].map(name => name.split('/'));
  if (was.pop() !== is.pop()) return null;
  while (was.length && is.length && was.at(-1) === is.at(-1)) {
    was.pop();
    is.pop();
  }
  const [before, after] = [was, is].map(folders =>
    folders.length ? `${folders.join('/')}/` : "the book's folder",
  );
  return `from ${before} to ${after}`;
}

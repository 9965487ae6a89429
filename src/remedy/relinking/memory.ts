// no-unit-test: test/remedy/relinking/again.test.ts and undo.test.ts remember and take back lines by it
import fs from 'node:fs/promises';
import path from 'node:path';
import type { RelinkedLine } from '../../shared/conversion';
import { Lines, now } from '../keep/journal';
import { type Keep, keepOf, keepsAbove, openKeep, pathIn } from '../keep/place';

/** A line of a layout or of the settings that was made to name a result. Paths are relative to the book's root. */
export interface Relink {
  file: string;
  line: number;
  /** As they stood in the source, before it named any result, and after. */
  from: string;
  to: string;
  original: string;
  result: string;
}

interface Remembered extends Relink {
  /** The book's folder, relative to the keep's top. */
  book: string;
  /** ISO 8601. */
  at: string;
}

const isRemembered = (value: unknown): boolean => {
  const { file, line, from, to, original, result, book, at } = (value ?? {}) as Partial<Remembered>;
  return (
    Number.isSafeInteger(line) &&
    [file, from, to, original, result, book, at].every(text => typeof text === 'string')
  );
};

/**
 * Remembers in the keep of the book at `root` (links resolved), where originals are kept too, which lines were relinked.
 * A line that named an earlier result goes back to what it said before that.
 * @param originals pictures by their results
 * @returns why that cannot be, and what follows; null where it is remembered
 */
export async function rememberRelinked(
  root: string,
  changes: readonly RelinkedLine[],
  originals: ReadonlyMap<string, string>,
): Promise<string | null> {
  if (!changes.length) return null;
  try {
    const before = await relinkedIn(root);
    const keep = await openKeep(await keepOf(root));
    const list = listOf(keep);
    for (const { file, line, from, to, picture } of changes) {
      const original = originals.get(picture)!;
      // it is back already
      if (original === picture) continue;
      const first = before.findLast(
        each => each.file === file && each.to === from && each.original === original,
      );
      const relink = { file, line, from: first?.from ?? from, to, original, result: picture };
      await list.add({ book: pathIn(keep, root), ...relink, at: now() });
    }
    return null;
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    return `What it named before could not be remembered (${code ?? message}), so "--undo" will not bring that back.`;
  }
}

/** What was relinked in the book at `root` (links resolved), oldest first; a book that was moved in its repository is known again. */
export async function relinkedIn(root: string): Promise<Relink[]> {
  const all = await Promise.all((await keepsAbove(root)).map(keep => inKeep(keep, root)));
  return all.flat().sort((x, y) => (x.at < y.at ? -1 : x.at > y.at ? 1 : 0));
}

async function inKeep(keep: Keep, root: string): Promise<Remembered[]> {
  const all = await listOf(keep).read();
  const moved = new Map<string, boolean>();
  for (const { book } of all) if (!moved.has(book)) moved.set(book, await isGone(path.join(keep.top, book)));
  return all.filter(({ book }) => book === pathIn(keep, root) || moved.get(book));
}

const isGone = (folder: string): Promise<boolean> =>
  fs.stat(folder).then(
    stat => !stat.isDirectory(),
    () => true,
  );

const listOf = ({ folder }: Keep) => new Lines<Remembered>(path.join(folder, 'relinked'), isRemembered);

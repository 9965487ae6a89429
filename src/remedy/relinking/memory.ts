// no-unit-test: test/remedy/relinking/undo.test.ts undoes by it
import { createHash } from 'node:crypto';
import fs from 'node:fs/promises';
import path from 'node:path';
import type { RelinkedLine } from '../../shared/conversion';
import { Lines } from '../keep/journal';

/** A line of a layout that was made to place a result. Paths are relative to the book's root. */
export interface Relink {
  file: string;
  line: number;
  /** As they stood in the source, before and after. */
  from: string;
  to: string;
  original: string;
  result: string;
}

const isRelink = (value: unknown): boolean => {
  const { file, line, from, to, original, result } = (value ?? {}) as Partial<Relink>;
  return (
    Number.isSafeInteger(line) && [file, from, to, original, result].every(text => typeof text === 'string')
  );
};

/** Remembers in the user's cache folder which lines were relinked in the book at `root` (links resolved). */
export async function rememberRelinked(
  memory: string,
  root: string,
  changes: readonly RelinkedLine[],
  replacements: ReadonlyMap<string, string>,
): Promise<void> {
  const originals = new Map([...replacements].map(([original, result]) => [result, original]));
  try {
    const list = await listOf(memory, root);
    for (const { file, line, from, to, picture } of changes)
      await list.add({ file, line, from, to, original: originals.get(picture)!, result: picture });
  } catch {
    // the layouts stand; without a memory they are not put back, and the report of the conversion has every line
  }
}

/** What was relinked in the book, oldest first. */
export const relinkedIn = async (memory: string, root: string): Promise<Relink[]> =>
  (await listOf(memory, root)).read();

async function listOf(memory: string, root: string): Promise<Lines<Relink>> {
  const folder = path.join(memory, 'relinked');
  await fs.mkdir(folder, { recursive: true }).catch(() => {});
  return new Lines(path.join(folder, createHash('sha256').update(root).digest('hex').slice(0, 32)), isRelink);
}

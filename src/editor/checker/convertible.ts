import fs from 'node:fs/promises';
import type { LeftAlone } from '../../shared/checker-protocol';
import type { PictureFacts } from '../../shared/picture';

/** A picture as its book was last read. */
interface Known {
  /** As it is called in its book. */
  path: string;
  facts: Pick<PictureFacts, 'unreadable'>;
}

/**
 * Which of the named files and folders (absolute) can be converted, and why the others cannot: known before anybody is
 * asked how. What no book knows is left to the conversion.
 * @param pagesOf what is known of a file; nothing where it is in no book
 */
export async function convertible(
  named: readonly string[],
  pagesOf: (file: string) => readonly Known[],
): Promise<{ paths: string[]; left: LeftAlone[] }> {
  const sorted = { paths: [] as string[], left: [] as LeftAlone[] };
  for (const file of named) {
    const pages = pagesOf(file);
    const path = pages[0]?.path ?? file;
    const unreadable = pages.find(({ facts }) => facts.unreadable)?.facts.unreadable;
    const isThere = await fs.lstat(file).then(
      () => true,
      () => false,
    );
    if (!isThere) sorted.left.push({ path, reason: 'There is no such file.' });
    else if (unreadable) sorted.left.push({ path, reason: unreadable.text });
    else sorted.paths.push(file);
  }
  return sorted;
}

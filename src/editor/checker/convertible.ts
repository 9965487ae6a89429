import fs from 'node:fs/promises';
import { losesUnasked } from '../../rules/unasked';
import type { CheckerAnswers, LeftAlone, Unmeant } from '../../shared/checker-protocol';
import type { BookPicture } from '../../shared/finding';
import type { Encoding } from '../../shared/picture';

/** A picture as its book was last read. */
type Known = Pick<BookPicture, 'path' | 'facts' | 'intent' | 'intentStated'>;

/**
 * Which of the named files and folders (absolute) can be converted, and why the others cannot: known before anybody is
 * asked how. What no book knows is left to the conversion.
 * @param pagesOf what is known of a file; nothing where it is in no book
 */
export async function convertible(
  named: readonly string[],
  pagesOf: (file: string) => readonly Known[],
): Promise<CheckerAnswers['convertible']['answer']> {
  const sorted = {
    paths: [] as string[],
    left: [] as LeftAlone[],
    unmeant: [] as Unmeant[],
    coloured: false,
  };
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
    else {
      sorted.paths.push(file);
      sorted.coloured ||= !pages.length || pages.some(hasColour);
      // one that was chosen by itself is meant
      const loses = named.length > 1 && pages[0] ? losesUnasked(pages[0]) : null;
      if (loses) sorted.unmeant.push({ file, path, loses });
    }
  }
  return sorted;
}

/** Grey by their numbers: every way from colour to grey keeps them as they are. */
const COLOURLESS: ReadonlySet<Encoding> = new Set([
  'single-channel',
  'bilevel',
  'rgb-neutral',
  'lab-neutral',
]);

const hasColour = ({ facts }: Known): boolean => !COLOURLESS.has(facts.encoding);

import { laidOut } from './directories';
import type { Field } from './fields';
import { Tag } from './tags';
import type { ExifTree } from './tree';

/** So far into a file is room kept before a maker's note: it must lie where it lay. */
const FARTHEST_NOTE = 1 << 20;
const HEADER = 8;

const DIRECTORIES = ['main', 'exif', 'gps', 'interop'] as const;

/**
 * The tree with what fits into so many bytes: first the maker's note goes, then the longest tags.
 * @param most bytes of the block
 * @param told gets a sentence for what was left out
 */
export function shrunk(tree: ExifTree, most: number, told: string[]): ExifTree {
  let fit = tree;
  const note = tree.exif.find(({ id }) => id === Tag.makerNote);
  const end = (tree.noteAt ?? 0) + (note?.data.length ?? 0);
  const astray =
    note && tree.noteAt !== null && (tree.noteAt < HEADER || end > Math.min(most, FARTHEST_NOTE));
  if (note && (astray || lengthOf(fit) > most)) {
    fit = { ...without(fit, note), noteAt: null };
    told.push(
      "The camera maker's own notes could not be carried: they only make sense at their place in the old file.",
    );
  }
  const lost: number[] = [];
  while (lengthOf(fit) > most) {
    const longest = DIRECTORIES.flatMap(name => fit[name]).reduce((a, b) =>
      b.data.length > a.data.length ? b : a,
    );
    fit = without(fit, longest);
    lost.push(longest.id);
  }
  if (lost.length > 0)
    told.push(
      `${lost.length === 1 ? 'One EXIF tag is' : `${lost.length} EXIF tags are`} too long for this format and could not be carried (${lost.join(', ')}).`,
    );
  return fit;
}

function without(tree: ExifTree, field: Field): ExifTree {
  const fit = { ...tree };
  for (const name of DIRECTORIES) fit[name] = tree[name].filter(other => other !== field);
  return fit;
}

/** Laid out only where it may be too much. */
const lengthOf = (tree: ExifTree): number => laidOut(tree).bytes.length;

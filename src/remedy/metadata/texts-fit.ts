import type { RemedyFormat } from '../../shared/remedy';
import type { Carried, Text } from './carried';
import { FieldMaker } from './fields';
import { textOf } from './source/text';
import { Tag } from './tags';
import { type ExifTree, emptyTree } from './tree';

/** Texts that TIFF and EXIF have a tag for, by PNG's keywords (PNG third edition, section 11.3.3.1). */
const HOMES: Record<string, number> = {
  Description: Tag.description,
  Author: Tag.artist,
  Copyright: Tag.copyright,
  Software: Tag.software,
};

/**
 * Finds every text a place: PNG keeps them all; JPEG and TIFF have tags for some, JPEG a comment for the rest, in a TIFF
 * the description takes the comment where it is free. What finds none is told.
 */
export function textsHoused(
  { texts, exif }: Pick<Carried, 'texts' | 'exif'>,
  format: RemedyFormat,
  told: string[],
): { texts: Text[]; exif: ExifTree | null } {
  if (format === 'png' || texts.length === 0) return { texts, exif };
  let tree = exif;
  const left: Text[] = [];
  for (const text of texts) {
    const id =
      HOMES[text.keyword] ?? (format === 'tiff' && text.keyword === 'Comment' ? Tag.description : undefined);
    const taken = tree?.main.find(field => field.id === id);
    if (taken && textOf(taken.data) === text.text) continue;
    if (id === undefined || taken) left.push(text);
    else {
      tree ??= emptyTree();
      tree = { ...tree, main: [...tree.main, new FieldMaker(tree.bigEndian).ascii(id, text.text)] };
    }
  }
  if (format === 'jpeg') return { texts: left, exif: tree };
  for (const { keyword } of left)
    told.push(`A TIFF has no place for the text "${keyword}" of the file; it was left out.`);
  return { texts: [], exif: tree };
}

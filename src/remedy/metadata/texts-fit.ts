import type { RemedyFormat } from '../../shared/remedy';
import type { Carried, Text } from './carried';
import { FieldMaker } from './fields';
import { textOf } from './source/text';
import { Tag } from './tags';
import { type ExifTree, emptyTree } from './tree';

/**
 * Texts that TIFF and EXIF have a tag for, by PNG's keywords (PNG third edition, section 11.3.3.1), which not every
 * program writes with their capital.
 */
const HOMES: Record<string, number> = {
  description: Tag.description,
  author: Tag.artist,
  copyright: Tag.copyright,
  software: Tag.software,
};
/** Before the text of an EXIF comment stands how it is written (EXIF 2.32, section 4.6.5). */
const ASCII = 'ASCII\0\0\0';
const UNICODE = 'UNICODE\0';

/**
 * Finds every text a place: PNG keeps them all; JPEG and TIFF have tags for some, JPEG a comment for the rest, in a TIFF
 * the description takes the comment where it is free, else EXIF's comment does. What finds none is told.
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
    const housed = withText(tree ?? emptyTree(), text, format);
    if (housed) tree = housed;
    else left.push(text);
  }
  if (format === 'jpeg') return { texts: left, exif: tree };
  if (left.length > 0) told.push(homeless(left));
  return { texts: [], exif: tree };
}

/** The tree that says the text too; null where it has no place for it. */
function withText(tree: ExifTree, { keyword, text }: Text, format: RemedyFormat): ExifTree | null {
  const comment = format === 'tiff' && keyword.toLowerCase() === 'comment';
  const id = HOMES[keyword.toLowerCase()] ?? (comment ? Tag.description : undefined);
  if (id === undefined) return null;
  const taken = tree.main.find(field => field.id === id);
  if (taken && textOf(taken.data) === text) return tree;
  const make = new FieldMaker(tree.bigEndian);
  if (!taken) return { ...tree, main: [...tree.main, make.ascii(id, text)] };
  if (!comment || tree.exif.some(field => field.id === Tag.userComment)) return null;
  return { ...tree, exif: [...tree.exif, make.bytes(Tag.userComment, commentBytes(text, tree.bigEndian))] };
}

/** Unicode stands in the byte order of the rest, as readers expect it. */
function commentBytes(text: string, bigEndian: boolean): Buffer {
  if (/^[\0-\x7f]*$/.test(text)) return Buffer.from(ASCII + text, 'latin1');
  const utf16 = Buffer.from(text, 'utf16le');
  return Buffer.concat([Buffer.from(UNICODE, 'latin1'), bigEndian ? utf16.swap16() : utf16]);
}

/** Some programs write dozens of texts: so many are not named one by one. */
const NAMED = 3;

function homeless(texts: readonly Text[]): string {
  const names = texts.slice(0, NAMED).map(({ keyword }) => `"${keyword}"`);
  const more = texts.length - names.length;
  if (texts.length === 1) return `A TIFF has no place for the text ${names[0]} of the file; it was left out.`;
  return `A TIFF has no place for ${texts.length} texts of the file; they were left out: ${names.join(', ')}${more > 0 ? ` and ${more} more` : ''}.`;
}

import path from 'node:path';
import { namesPicture } from '../../book/discovery/extensions';
import type { RemedyEncoding, RemedyFormat } from '../../shared/remedy';

/** What files of a format are called; the first where there is a choice. */
const extensions: Record<RemedyFormat, readonly string[]> = {
  jpeg: ['jpg', 'jpeg', 'jpe', 'jfif'],
  png: ['png'],
  tiff: ['tif', 'tiff'],
};

/**
 * What a result is called: `plate.rgb-neutral.jpg`. It follows from the picture's own name alone, so that it is the
 * same whichever other pictures are named along with it, or come into the folder later. The picture's extension stays
 * in the name wherever another picture could want the shorter one: where the format changes (`plate.png` becomes
 * `plate.png.rgb-neutral.tif`, beside what `plate.tif` becomes), and beside the pictures where the rest of the name is
 * itself that of a picture (`plate.jpg.png`): there the name has to say what the result was made of.
 * @param name without folders
 * @param encoding null: left out, for a folder of its own
 */
export function resultName(name: string, format: RemedyFormat, encoding: RemedyEncoding | null): string {
  const { name: stem, ext } = path.parse(name);
  const own = ext.slice(1);
  const stays = isNamedAs(name, format);
  const short = stays && !(encoding && namesPicture(stem));
  const extension = stays ? own : extensions[format][0];
  return [short ? stem : name, ...(encoding ? [encoding] : []), extension].join('.');
}

/** Whether a file's name is one of its format. */
export const isNamedAs = (name: string, format: RemedyFormat): boolean =>
  extensions[format].includes(path.extname(name).slice(1).toLowerCase());

/** Two paths that some file systems take for one: letters of either case, an umlaut in one character or two. */
export const folded = (file: string): string => file.normalize('NFC').toLowerCase();

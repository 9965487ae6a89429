import type { Format } from '../shared/picture';
import type { RemedyFormat, RemedyWish } from '../shared/remedy';
import { RemedyError } from './remedy-error';

/**
 * The format that a result is written in: the wished one, else the source's own where it can hold the result, else
 * TIFF, which holds everything.
 * @throws RemedyError where the wished format cannot hold what is wished
 */
export function formatOf(
  source: Format,
  { to, bits, format }: Pick<RemedyWish, 'to' | 'bits' | 'format'>,
): RemedyFormat {
  if (format === 'png' && to === 'black-only')
    throw new RemedyError('A PNG cannot hold inks. Write black ink alone as TIFF or JPEG.');
  if (format === 'jpeg' && bits === 16)
    throw new RemedyError('A JPEG has 8 bits a channel. Write 16 bits as TIFF or PNG, or ask for 8.');
  if (format) return format;
  if (source === 'jpeg' && bits !== 16) return 'jpeg';
  if (source === 'png' && to !== 'black-only') return 'png';
  return 'tiff';
}

/** Why the result has another format than its source, unasked; null where it has not. */
export function formatChange(
  source: Format,
  wish: Pick<RemedyWish, 'to' | 'bits' | 'format'>,
): string | null {
  const format = formatOf(source, wish);
  if (wish.format || source === format) return null;
  if (source === 'png') return 'A PNG cannot hold inks: the result is a TIFF.';
  if (source === 'jpeg') return 'A JPEG cannot hold 16 bits a channel: the result is a TIFF.';
  return `No ${source.toUpperCase()} is written here, and print houses seldom take it: the result is a TIFF.`;
}

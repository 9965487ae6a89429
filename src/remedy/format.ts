import type { Format } from '../shared/picture';
import type { RemedyFormat, RemedyWish } from '../shared/remedy';
import type { Stays } from './luminance';
import { RemedyError } from './remedy-error';

type FormatWish = Pick<RemedyWish, 'to' | 'bits' | 'format' | 'quality'>;

/**
 * The format that a result is written in: the wished one, else the source's own where it can hold the result, else
 * TIFF, which holds everything. A JPEG rounds whatever is coded anew, so it can only where that is not needed, or where
 * its quality was named.
 * @param stays the luminance of the source can stay as it is coded
 * @throws RemedyError where the wished format cannot hold what is wished
 */
export function formatOf(
  source: Format,
  { to, bits, format, quality }: FormatWish,
  stays: boolean,
): RemedyFormat {
  if (format === 'png' && to === 'black-only')
    throw new RemedyError('A PNG cannot hold inks. Write black ink alone as TIFF or JPEG.');
  if (format === 'jpeg' && bits === 16)
    throw new RemedyError('A JPEG has 8 bits a channel. Write 16 bits as TIFF or PNG, or ask for 8.');
  if (format) return format;
  if (source === 'jpeg' && bits !== 16 && (stays || quality !== null)) return 'jpeg';
  if (source === 'png' && to !== 'black-only') return 'png';
  return 'tiff';
}

/** Why the result has another format than its source, unasked; null where it has not. */
export function formatChange(source: Format, wish: FormatWish, stays: Stays): string | null {
  const format = formatOf(source, wish, stays === 'surely');
  if (wish.format || source === format) return null;
  const rounded = source === 'jpeg' && wish.bits !== 16;
  const asked = rounded ? ' Ask for JPEG ("--as jpeg") to have one all the same.' : '';
  return `${unheld(source, wish, stays)}: the result is a TIFF.${asked}`;
}

/** Whether a result that would be a TIFF can be a PNG as well: it holds no inks. */
export const pngWouldDo = (made: { format: RemedyFormat } & Pick<RemedyWish, 'to'>): boolean =>
  made.format === 'tiff' && made.to !== 'black-only';

/** The same where it is a PNG in the stead of a TIFF. @param since why, as a sentence ends */
export const pngChange = (source: Format, wish: FormatWish, stays: Stays, since: string): string =>
  `${source === 'tiff' ? '' : `${unheld(source, wish, stays)}. `}The result is a PNG and no TIFF, since ${since}.`;

/** Why the source's own format does not hold the result. */
function unheld(source: Format, { bits }: FormatWish, stays: Stays): string {
  if (source === 'png') return 'A PNG cannot hold inks';
  if (source !== 'jpeg') return `No ${source.toUpperCase()} is written here, and print houses seldom take it`;
  if (bits === 16) return 'A JPEG cannot hold 16 bits a channel';
  return stays === 'perhaps'
    ? 'A JPEG can perhaps keep these tones as they are coded, and else rounds them anew, by up to about L* 1 even at quality 100'
    : 'A JPEG rounds these tones anew, by up to about L* 1 even at quality 100';
}

import type { RemedyFormat } from '../../shared/remedy';
import type { Stored } from '../encode/stored';
import type { Carried } from '../metadata/carried';
import { fitted } from '../metadata/fit';
import { RemedyError } from '../remedy-error';
import { jpegAround, jpegBytes } from './jpeg';
import { pngBytes } from './png';
import { tiffBytes } from './tiff';

/** A file ready to be written. */
export interface Written {
  bytes: Buffer;
  /** What could not be carried into this format, and what was lost or put right before: plain sentences. */
  told: string[];
}

/**
 * A picture's numbers and metadata as a file. The same bytes whenever it is given the same.
 * @param stored what the format can hold: JPEG has 8 bits and no alpha, PNG no inks
 * @param quality of JPEG, 1-100
 * @throws RemedyError where the format cannot hold the picture
 */
export async function fileBytes(
  stored: Stored,
  format: RemedyFormat,
  quality: number,
  carried: Carried,
): Promise<Written> {
  refuse(stored, format);
  const fit = fitted(carried, stored, format);
  return { bytes: await written(stored, format, quality, fit), told: fit.told };
}

/** The same of a JPEG whose pixels are coded already, from its quantisation tables to its end. */
export function codedJpeg(coded: Buffer, stored: Stored, carried: Carried): Written {
  const fit = fitted(carried, stored, 'jpeg');
  return { bytes: jpegAround(coded, stored, fit), told: fit.told };
}

function written(stored: Stored, format: RemedyFormat, quality: number, carried: Carried): Promise<Buffer> {
  switch (format) {
    case 'jpeg':
      return jpegBytes(stored, quality, carried);
    case 'png':
      return pngBytes(stored, carried);
    case 'tiff':
      return tiffBytes(stored, carried);
  }
}

/** The most pixels an edge may have in a JPEG (16 bits, less what the encoder keeps for itself). */
const MOST_JPEG = 65500;

function refuse({ width, height, space, bits, alpha }: Stored, format: RemedyFormat): void {
  if (format === 'png' && space === 'cmyk')
    throw new RemedyError('A PNG cannot hold inks. Write a TIFF or a JPEG.');
  if (format !== 'jpeg') return;
  if (bits !== 8) throw new RemedyError('A JPEG holds 8 bits a channel only. Write a TIFF or a PNG.');
  if (alpha) throw new RemedyError('A JPEG cannot hold transparency. Write a TIFF or a PNG.');
  if (Math.max(width, height) > MOST_JPEG)
    throw new RemedyError(`A JPEG has at most ${MOST_JPEG} pixels a side. Write a TIFF or a PNG.`);
}

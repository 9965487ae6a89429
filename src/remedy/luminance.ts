import fs from 'node:fs/promises';
import { fileSource, readHeader, type Source, UnreadableError } from '../picture/header';
import { readingOf } from '../picture/meaning';
import type { Reading } from '../picture/meaning/types';
import type { Header } from '../picture/types';
import type { PictureFacts } from '../shared/picture';
import type { RemedyWish } from '../shared/remedy';
import { keepsLevels } from './encode';
import { promisesLuminance } from './file/lossless-jpeg';
import { rampLightness } from './grey/ramp';

/**
 * Whether the luminance of a picture can stay as it is coded, since only colour goes or comes: `surely`; `perhaps`,
 * which shows when the pixels of the result are held against what is wished; or not at all.
 */
export type Stays = 'surely' | 'perhaps' | 'no';

/**
 * Whether the header promises that a picture's numbers can become those of a result without being coded anew: it is a
 * JPEG that stores luminance apart, and its greys are those of the result already. Nothing is decoded for that.
 * @param greyProfile by which the result's greys are read; null: as those of sRGB
 */
export async function storesLuminance(
  source: Source,
  header: Header,
  { meaning }: Reading,
  greyProfile: RemedyWish['greyProfile'],
): Promise<boolean> {
  const { format, space } = header;
  if (format !== 'jpeg' || (space !== 'grey' && space !== 'rgb')) return false;
  return promisesLuminance(source) && (await keepsLevels(rampLightness(meaning, space, 256), greyProfile));
}

/** The same of a file, of which no more is read than the header; false where that cannot be read. */
export async function fileStoresLuminance(
  path: string,
  greyProfile: RemedyWish['greyProfile'],
): Promise<boolean> {
  const file = await fs.open(path).catch(() => null);
  if (!file) return false;
  try {
    const source = fileSource(file.fd, (await file.stat()).size);
    const header = readHeader(source);
    return await storesLuminance(source, header, await readingOf(header), greyProfile);
  } catch (error) {
    if (error instanceof UnreadableError) return false;
    throw error;
  } finally {
    await file.close();
  }
}

/**
 * Whether luminance can stay as it is for this wish. Where the picture is neutral that is certain: R, G and B that differ
 * by a step at most have an L* within 0.25 of their luminance's, by either method but a mix of channels.
 * @param promised by the header
 */
export function luminanceStays(
  promised: boolean,
  { encoding, orientation, chroma }: Pick<PictureFacts, 'encoding' | 'orientation' | 'chroma'>,
  wish: RemedyWish,
): Stays {
  if (!promised || !asksForColourAlone(wish, chroma?.max === 0, orientation)) return 'no';
  switch (encoding) {
    case 'single-channel':
      return 'surely';
    case 'rgb-neutral':
      return wish.grey.kind === 'mix' && chroma?.max !== 0 ? 'perhaps' : 'surely';
    case 'rgb-residual':
    case 'rgb-toned':
      return 'perhaps';
    default:
      return 'no';
  }
}

const asksForColourAlone = (
  { to, below, curve, quality, bits, format, upright }: RemedyWish,
  colourless: boolean,
  orientation: number,
): boolean =>
  (to === 'single-channel' || (to === 'rgb-neutral' && (below === null || colourless))) &&
  curve === null &&
  quality === null &&
  bits !== 16 &&
  (format === null || format === 'jpeg') &&
  !(upright && orientation !== 1);

import type { OutputInfo } from 'sharp';
import type { Raster, Shown } from '../shared/reader-protocol';
import { decode, needsBytes, readsAnotherWay } from './decode';
import { decodeError } from './decode-errors';
import { sharp } from './decode-sharp';
import { readHeader } from './header';
import { type OnSize, openPicture } from './open';
import { shownInks } from './raster-inks';
import { plainTiff } from './raster-tiff';
import type { Header } from './types';

/** The longest edge that is worth sending to a screen. */
export const LONGEST_EDGE = 2048;

/** What is transparent is judged as laid on it, and shown so: a page's own grey behind it would be no print. */
const PAPER = { r: 255, g: 255, b: 255 };

/**
 * A picture for showing: shrunk, upright, in sRGB through the picture's own profile, inks by what they are judged
 * to mean, laid on paper white. Never for judging.
 * @param page from 1
 * @throws UnreadableError
 */
export async function rasterOf(
  content: Shown,
  page: number,
  longEdge: number,
  onSize?: OnSize,
): Promise<Raster> {
  const file = openPicture({ ...content, sha256: '' }, onSize);
  try {
    const header = readHeader(file.source, page);
    onSize?.(file.source.size, (header.width * header.height) / 1e6);
    const edge = Math.max(1, Math.min(LONGEST_EDGE, Math.round(longEdge)));
    const plain = isPlain(header);
    const input = plain
      ? file.input
      : plainTiff(await decode(needsBytes(header) ? file.bytes() : file.input, header), header);
    const own = plain && header.format === 'tiff' ? { page: page - 1 } : {};
    const { data, info } = await shownAs(input, header, { longEdge: edge, ...own }).catch(error => {
      throw decodeError(error, header);
    });
    return {
      width: info.width,
      height: info.height,
      orientation: header.orientation,
      fullWidth: header.width,
      fullHeight: header.height,
      png: data,
    };
  } finally {
    file.close();
  }
}

/**
 * A picture, or a part of one, as a PNG for showing: upright, in sRGB, no longer than `longEdge` and never enlarged.
 * @param input in a layout that the decoder shows as it is meant
 * @param page of a TIFF, from 0
 */
export async function shownAs(
  input: Buffer | string,
  header: Header,
  { longEdge, page }: { longEdge: number; page?: number },
): Promise<{ data: Buffer; info: OutputInfo }> {
  const inks = header.space === 'cmyk';
  const shrunk = sharp(input, {
    limitInputChannels: 32,
    ignoreIcc: inks,
    ...(page === undefined ? {} : { page }),
  })
    .autoOrient()
    .resize({ width: longEdge, height: longEdge, fit: 'inside', withoutEnlargement: true });
  const shown = inks ? await shownInks(shrunk, header) : shrunk.toColourspace('srgb');
  return shown
    .flatten({ background: PAPER })
    .png({ compressionLevel: 3 })
    .toBuffer({ resolveWithObject: true });
}

/** Layouts that the decoder shows as they are meant; the others are first brought to a plain one. */
function isPlain(header: Header): boolean {
  const odd = header.inverted || header.spots > 0 || header.sample === 'float' || header.space === 'lab';
  return !odd && !readsAnotherWay(header);
}

import { Extra, Photometric } from './header/tiff-space';
import type { Header, Samples } from './types';

const PLAIN: number[] = [Photometric.blackIsZero, Photometric.rgb, Photometric.separated];

/** Whether the page's samples stand in the file exactly as `Samples` wants them: nothing need be decoded or copied. */
export function isBare(header: Header): boolean {
  const { tiff, sample, spots, alpha } = header;
  if (!tiff || tiff.bareAt === null || sample !== 'uint' || spots > 0) return false;
  if (alpha && tiff.extra[0] !== Extra.unassociated) return false;
  return PLAIN.includes(tiff.photometric);
}

/** The samples of a bare page as a window onto the file's bytes; null where they lie at an odd address or beyond the end. */
export function bareSamples(bytes: Buffer, header: Header): Samples | null {
  const { width, height, alpha, space, bits, tiff } = header;
  const channels = header.channels as Samples['channels'];
  const count = width * height * (channels + (alpha ? 1 : 0));
  const at = bytes.byteOffset + tiff!.bareAt!;
  if (tiff!.bareAt! + (count * bits) / 8 > bytes.length) return null;
  if (bits === 16 && at % 2 !== 0) return null;
  const data =
    bits === 8 ? new Uint8Array(bytes.buffer, at, count) : new Uint16Array(bytes.buffer, at, count);
  return { width, height, channels, alpha, space, data };
}

import type { Header } from '../types';
import { type Exif, parseExif } from './exif';
import { LONGEST_FIELD, Numbers, type Source } from './source';
import { UnreadableError } from './unreadable';

interface Found {
  width: number;
  height: number;
  alpha: boolean;
  icc: Buffer | null;
  exif: Exif | null;
  incomplete: boolean;
}

const MOST_CHUNKS = 10_000;

/** WebP container specification. Always three colour channels: the format has no other. First frame only. */
export function readWebp(source: Source): Header {
  const found = walk(source);
  if (!found.width)
    throw new UnreadableError(
      found.incomplete ? 'truncated' : 'corrupt',
      `The WebP ${found.incomplete ? 'ends before its picture begins' : 'holds no picture'}. Copy or export it again.`,
      'webp',
    );
  return {
    format: 'webp',
    width: found.width,
    height: found.height,
    channels: 3,
    bits: 8,
    sample: 'uint',
    alpha: found.alpha,
    palette: false,
    space: 'rgb',
    inverted: false,
    spots: 0,
    page: 1,
    pages: 1,
    orientation: found.exif?.orientation ?? 1,
    ppi: found.exif?.ppi ?? null,
    icc: found.icc,
    incomplete: found.incomplete,
    remarks: [],
  };
}

function walk(source: Source): Found {
  const found: Found = { width: 0, height: 0, alpha: false, icc: null, exif: null, incomplete: false };
  const n = new Numbers(source, false);
  found.incomplete = 8 + n.u32(4) > source.size;
  for (const chunk of chunks(source)) take(found, n, chunk);
  return found;
}

interface Chunk {
  type: string;
  /** Where the content begins, and its length as the chunk says; the last one may be cut. */
  at: number;
  length: number;
}

export function* chunks(source: Source): Generator<Chunk> {
  const n = new Numbers(source, false);
  for (let at = 12, i = 0; at + 8 <= source.size && i < MOST_CHUNKS; i++) {
    const length = n.u32(at + 4);
    yield { type: n.text(at, 4), at: at + 8, length };
    at += 8 + length + (length & 1);
  }
}

function take(found: Found, n: Numbers, { type, at: body, length }: Chunk): void {
  const whole = () =>
    length <= LONGEST_FIELD && body + length <= n.source.size ? n.source.bytes(body, length) : null;
  switch (type) {
    case 'VP8X': // extended: 24-bit sizes less one; bit 4 says alpha
      found.alpha = (n.u8(body) & 0x10) !== 0;
      found.width = (n.u32(body + 4) & 0xffffff) + 1;
      found.height = (n.u32(body + 6) >>> 8) + 1;
      break;
    case 'VP8 ': // lossy key frame: start code, then 14-bit sizes
      found.width ||= n.u16(body + 6) & 0x3fff;
      found.height ||= n.u16(body + 8) & 0x3fff;
      break;
    case 'VP8L': {
      // lossless: 14 + 14 bits less one, then the alpha bit
      if (found.width) break;
      const bits = n.u32(body + 1);
      found.width = (bits & 0x3fff) + 1;
      found.height = ((bits >>> 14) & 0x3fff) + 1;
      found.alpha = ((bits >>> 28) & 1) === 1;
      break;
    }
    case 'ICCP':
      found.icc = whole();
      break;
    case 'EXIF': {
      const block = whole();
      // some writers keep JPEG's "Exif\0\0" before the block
      if (block)
        found.exif = parseExif(block.toString('latin1', 0, 4) === 'Exif' ? block.subarray(6) : block);
    }
  }
}

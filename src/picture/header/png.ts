import { inflateSync } from 'node:zlib';
import type { Remark } from '../../shared/picture';
import type { Remedied } from '../../shared/remedy';
import type { Header } from '../types';
import { LONGEST_PACKET } from '../xmp/packet';
import { recordIn } from '../xmp/record';
import { perInch } from './density';
import { type Exif, parseExif } from './exif';
import { pngText, XMP_KEYWORD } from './png-text';
import { LONGEST_FIELD, type Source } from './source';
import { UnreadableError } from './unreadable';

/** Chunks of a PNG that say how its numbers are meant (PNG third edition, section 11). */
interface Chunks {
  ihdr: Buffer | null;
  transparent: boolean;
  icc: Buffer | null;
  badProfile: boolean;
  gamma: number | null;
  srgb: boolean;
  ppi: { x: number; y: number } | null;
  exif: Exif | null;
  remedied: Remedied | null;
  ended: boolean;
  /** Another chunk should follow, and something else stands there, though the file is not cut. */
  damaged: boolean;
}

/** Bytes of the file's mark, and of a chunk before and behind its content. */
const SIGNATURE = 8;
const HEAD = 8;
const CHECKSUM = 4;

/** A real file has some thousands of chunks at most (one for every 8 KB of pixels). */
const MOST_CHUNKS = 200_000;

export function readPng(source: Source): Header {
  const found = walk(source);
  if (!found.ihdr || found.ihdr.length < 13)
    throw new UnreadableError(
      found.ended ? 'corrupt' : 'truncated',
      'The PNG has no whole header. Copy or export it again.',
      'png',
    );
  const width = found.ihdr.readUInt32BE(0);
  const height = found.ihdr.readUInt32BE(4);
  const [depth, colourType] = [found.ihdr[8], found.ihdr[9]];
  if (![0, 2, 3, 4, 6].includes(colourType) || ![1, 2, 4, 8, 16].includes(depth))
    throw new UnreadableError(
      'corrupt',
      'The PNG header holds values that do not exist. Export it again.',
      'png',
      {
        width,
        height,
      },
    );
  const palette = colourType === 3;
  const grey = colourType === 0 || colourType === 4;
  const remarks: Remark[] = [];
  if (found.badProfile)
    remarks.push({ code: 'bad-profile', text: 'The embedded profile is damaged; it was not used.' });
  return {
    format: 'png',
    width,
    height,
    channels: grey ? 1 : 3,
    bits: palette ? 8 : depth,
    sample: 'uint',
    alpha: colourType >= 4 || found.transparent,
    palette,
    space: grey ? 'grey' : 'rgb',
    inverted: false,
    spots: 0,
    page: 1,
    pages: 1,
    orientation: found.exif?.orientation ?? 1,
    ppi: found.ppi ?? found.exif?.ppi ?? null,
    icc: found.icc,
    remedied: found.remedied,
    gamma: found.icc || found.srgb ? null : found.gamma,
    incomplete: !found.ended && !found.damaged,
    remarks,
  };
}

function walk(source: Source): Chunks {
  const found: Chunks = {
    ihdr: null,
    transparent: false,
    icc: null,
    badProfile: false,
    gamma: null,
    srgb: false,
    ppi: null,
    exif: null,
    remedied: null,
    ended: false,
    damaged: false,
  };
  let next = SIGNATURE;
  for (const { type, at, length } of chunks(source)) {
    found.ended = type === 'IEND';
    next = at + length + CHECKSUM;
    if (type !== 'IDAT' && length <= LONGEST_FIELD) take(found, type, source, at, length);
  }
  if (!found.ended && next + HEAD <= source.size)
    found.damaged = !isType(source.bytes(next + 4, 4)) || endsAsMeant(source);
  return found;
}

/** Chunks up to the one that ends the file, that one included, as far as they are whole; `at`: where the content begins. */
export function* chunks(source: Source): Generator<{ type: string; at: number; length: number }> {
  // the EXIF chunk may follow the pixels, so the walk goes to the end; it reads chunk headers only
  for (let at = SIGNATURE, i = 0; at + HEAD + CHECKSUM <= source.size && i < MOST_CHUNKS; i++) {
    const head = source.bytes(at, HEAD);
    const length = head.readUInt32BE();
    const type = head.toString('latin1', 4);
    if (!isType(head.subarray(4)) || at + HEAD + CHECKSUM + length > source.size) return;
    yield { type, at: at + HEAD, length };
    if (type === 'IEND') return;
    at += HEAD + CHECKSUM + length;
  }
}

/** Whether the last chunk that every PNG has stands at the file's end. */
const endsAsMeant = (source: Source) =>
  source.bytes(source.size - CHECKSUM - 4, 4).toString('latin1') === 'IEND';

/** Chunk types are four letters. */
const isType = (type: Buffer) => type.every(byte => /[A-Za-z]/.test(String.fromCharCode(byte)));

function take(found: Chunks, type: string, source: Source, at: number, length: number): void {
  const body = () => source.bytes(at, length);
  switch (type) {
    case 'IHDR':
      found.ihdr ??= body();
      break;
    case 'tRNS':
      found.transparent = true;
      break;
    case 'sRGB':
      found.srgb = true;
      break;
    case 'gAMA':
      if (length === 4) found.gamma = body().readUInt32BE() / 100000;
      break;
    case 'pHYs': {
      const b = body();
      if (length >= 9 && b[8] === 1) found.ppi = perInch(b.readUInt32BE(0), b.readUInt32BE(4), 'metre');
      break;
    }
    case 'iCCP':
      found.icc = inflateProfile(body());
      found.badProfile = !found.icc;
      break;
    case 'eXIf':
      found.exif = parseExif(body());
      break;
    case 'iTXt':
      if (length <= LONGEST_PACKET) found.remedied ??= remedyIn(body());
  }
}

function remedyIn(chunk: Buffer): Remedied | null {
  if (!chunk.toString('latin1', 0, XMP_KEYWORD.length + 1).startsWith(`${XMP_KEYWORD}\0`)) return null;
  const text = pngText('iTXt', chunk);
  return text && recordIn(text.bytes);
}

function inflateProfile(body: Buffer): Buffer | null {
  const name = body.indexOf(0);
  if (name < 0) return null;
  try {
    return inflateSync(body.subarray(name + 2), { maxOutputLength: LONGEST_FIELD });
  } catch {
    return null;
  }
}

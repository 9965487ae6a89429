// no-unit-test: index.test.ts and the outside checks read again what it writes
import { BitsWritten } from './bits-write';
import type { CodedBlocks } from './coded';
import type { CodeList } from './codes-read';
import { bitsFor, type Coder, shortestCodes } from './codes-write';
import type { Luminance } from './read';
import { bitsOf, sizeOf } from './tokens';
import { Unusual } from './unusual';
import { BLOCK } from './zigzag';

/** The most bits that the DC of a baseline JPEG may differ by from that of the block before (T.81, section F.1.2.1). */
const MOST_DC = 11;

/** How DC is coded: for each block how many bits the difference takes. @throws Unusual where that is too many */
function sizesOf(dc: Int16Array): Uint8Array {
  const sizes = new Uint8Array(dc.length);
  for (let place = 0, before = 0; place < dc.length; place++) {
    sizes[place] = sizeOf(dc[place] - before);
    if (sizes[place] > MOST_DC) throw new Unusual('a coefficient out of range');
    before = dc[place];
  }
  return sizes;
}

/** The codes of DC that make it shortest, and how many bits it comes to. */
function codesFor(sizes: Uint8Array): { codes: Coder; bits: number } {
  const often = new Uint32Array(256);
  for (let place = 0; place < sizes.length; place++) often[sizes[place]]++;
  const codes = shortestCodes(often);
  return { codes, bits: bitsFor(codes, often) };
}

/** @param flatBits bits of zero behind every block: those of its colour */
function written(
  { dc, starts, lengths, bytes }: CodedBlocks,
  sizes: Uint8Array,
  { codes, bits }: ReturnType<typeof codesFor>,
  flatBits: number,
): Buffer {
  let total = bits + dc.length * flatBits;
  for (let place = 0; place < lengths.length; place++) total += lengths[place];
  const out = new BitsWritten(total);
  const coded = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let before = 0;
  for (let place = 0; place < dc.length; place++) {
    const size = sizes[place];
    out.put(codes.code[size], codes.length[size]);
    out.put(bitsOf(dc[place] - before, size), size);
    before = dc[place];
    out.putBits(coded, starts[place], lengths[place]);
    out.put(0, flatBits);
  }
  out.fill();
  return out.stuffed();
}

/**
 * A baseline JPEG of luminance that was read, from its quantisation table to its end: what stands behind SOI and the
 * metadata. Where colour is wanted, it is none: each of its blocks is flat.
 * @param channels 1: grey; 3: YCbCr
 * @throws Unusual where a baseline JPEG cannot hold a coefficient
 */
export function baselineJpeg(luminance: Luminance, channels: 1 | 3): Buffer {
  const { blocks, steps } = luminance;
  const sizes = sizesOf(blocks.dc);
  const ofDc = codesFor(sizes);
  const flat = shortestCodes(Uint32Array.from({ length: 256 }, (_, symbol) => (symbol === 0 ? 1 : 0)));
  // two blocks of two codes, of which each is a single zero
  const flatBits = channels === 3 ? 4 : 0;
  const tables = [table(0x00, ofDc.codes), table(0x10, blocks.codes)];
  if (channels === 3) tables.push(table(0x01, flat), table(0x11, flat));
  return Buffer.concat([
    segment(0xdb, [0, ...steps]),
    frame(luminance, channels),
    segment(0xc4, tables.flat()),
    scan(channels),
    written(blocks, sizes, ofDc, flatBits),
    Buffer.from([0xff, 0xd9]),
  ]);
}

const table = (key: number, { counts, symbols }: CodeList): number[] => [key, ...counts, ...symbols];

function frame({ width, height }: Luminance, channels: number): Buffer {
  const components = Array.from({ length: channels }, (_, i) => [i + 1, 0x11, 0]);
  return segment(0xc0, [
    8,
    ...[height >> 8, height & 0xff, width >> 8, width & 0xff, channels],
    ...components.flat(),
  ]);
}

function scan(channels: number): Buffer {
  const members = Array.from({ length: channels }, (_, i) => [i + 1, i === 0 ? 0x00 : 0x11]);
  return segment(0xda, [channels, ...members.flat(), 0, BLOCK - 1, 0]);
}

function segment(marker: number, body: readonly number[]): Buffer {
  const length = body.length + 2;
  return Buffer.from([0xff, marker, length >> 8, length & 0xff, ...body]);
}

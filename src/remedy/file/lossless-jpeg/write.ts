// no-unit-test: index.test.ts and the outside checks read again what it writes
import type { CodedBlocks } from './coded';
import type { CodeList } from './codes-read';
import { bitsFor, type Coder, shortestCodes } from './codes-write';
import type { Luminance } from './read';
import { sizeOf } from './tokens';
import { Unusual } from './unusual';
import { BLOCK } from './zigzag';

/** The most bits that the DC of a baseline JPEG may differ by from that of the block before (T.81, section F.1.2.1). */
const MOST_DC = 11;
/** Blocks that are written in one call. */
const AT_A_TIME = 4096;

/** The codes of DC that make it shortest. @throws Unusual where a difference takes too many bits */
function codesFor({ workspace, blocks, dc }: CodedBlocks): { codes: Coder; bits: number } {
  const often = new Uint32Array(256);
  const numbers = new Int16Array(workspace.buffer, dc, blocks);
  for (let place = 0, before = 0; place < blocks; place++) {
    often[sizeOf(numbers[place] - before)]++;
    before = numbers[place];
  }
  if (often.some((many, size) => many > 0 && size > MOST_DC)) throw new Unusual('a coefficient out of range');
  const codes = shortestCodes(often);
  return { codes, bits: bitsFor(codes, often) };
}

/** @param flatBits bits of zero behind every block: those of its colour */
function written(
  { workspace, blocks, dc, starts, lengths, bytes }: CodedBlocks,
  { codes, bits }: ReturnType<typeof codesFor>,
  flatBits: number,
): Buffer {
  const many = new Uint16Array(workspace.buffer, lengths, blocks);
  let total = bits + blocks * flatBits;
  for (let place = 0; place < blocks; place++) total += many[place];
  const ofDc = workspace.holding(
    Uint32Array.from({ length: MOST_DC + 1 }, (_, size) => codes.code[size] | (codes.length[size] << 16)),
  );
  // each byte may be a mark, which takes two
  const to = workspace.room(2 * Math.ceil(total / 8));
  const job = workspace.holding(Uint32Array.of(dc, starts, lengths, bytes, ofDc, flatBits));
  const { kernel } = workspace;
  kernel.beginWriting(to);
  for (let from = 0; from < blocks; from += AT_A_TIME)
    kernel.writeBlocks(job, from, Math.min(blocks, from + AT_A_TIME));
  const end = kernel.endWriting() >>> 0;
  return Buffer.from(workspace.bytes(to, end - to));
}

/**
 * A baseline JPEG of luminance that was read, from its quantisation table to its end: what stands behind SOI and the
 * metadata. Where colour is wanted, it is none: each of its blocks is flat.
 * @param channels 1: grey; 3: YCbCr
 * @throws Unusual where a baseline JPEG cannot hold a coefficient
 */
export function baselineJpeg(luminance: Luminance, channels: 1 | 3): Buffer {
  const { blocks, steps } = luminance;
  const ofDc = codesFor(blocks);
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
    written(blocks, ofDc, flatBits),
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

// no-unit-test: index.test.ts and the outside checks read again what it writes
import { BitsWritten } from './bits-write';
import { type Coder, shortestCodes } from './codes-write';
import type { Luminance } from './read';
import { Unusual } from './unusual';
import { BLOCK, EDGE } from './zigzag';

/** The most bits that a coefficient of a baseline JPEG may have (T.81, sections F.1.2.1 and F.1.2.2). */
const MOST_AC = 10;
const MOST_DC = 11;

/** A run of 16 zeros, and the end of a block. */
const ZEROS = 0xf0;
const END = 0;

const sizeOf = (value: number): number => 32 - Math.clz32(Math.abs(value));
/** Negative numbers are written less one (T.81, section F.1.2.1). */
const bitsOf = (value: number, size: number): number => (value < 0 ? value + (1 << size) - 1 : value);

/** A symbol and the bits that follow it as one number. How many follow is in the symbol's low half, of DC and of AC. */
const tokenOf = (isDc: 0 | 1, symbol: number, bits: number): number => (isDc << 20) | (symbol << 12) | bits;
const isDc = (token: number): boolean => token >> 20 !== 0;
const symbolIn = (token: number): number => (token >> 12) & 0xff;
const sizeIn = (token: number): number => (token >> 12) & 15;
const bitsIn = (token: number): number => token & 0xfff;

/**
 * All that is coded, block by block, each beginning with its DC. Listed once, since it is needed twice: to make the codes,
 * and to write.
 * @throws Unusual where a baseline JPEG cannot hold a coefficient
 */
function tokensOf({ width, height, across, coefficients }: Luminance): Uint32Array {
  const [columns, rows] = [Math.ceil(width / EDGE), Math.ceil(height / EDGE)];
  let tokens = new Uint32Array(MOST_TOKENS + (coefficients.length >> 3));
  let listed = 0;
  let before = 0;
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) {
      if (listed + MOST_TOKENS > tokens.length) tokens = roomier(tokens);
      const at = (y * across + x) * BLOCK;
      const difference = coefficients[at] - before;
      const dcSize = sizeOf(difference);
      if (dcSize > MOST_DC) throw new Unusual('a coefficient out of range');
      tokens[listed++] = tokenOf(1, dcSize, bitsOf(difference, dcSize));
      before = coefficients[at];
      let run = 0;
      for (let i = at + 1; i < at + BLOCK; i++) {
        const value = coefficients[i];
        if (value === 0) {
          run++;
          continue;
        }
        for (; run > 15; run -= 16) tokens[listed++] = tokenOf(0, ZEROS, 0);
        const size = sizeOf(value);
        if (size > MOST_AC) throw new Unusual('a coefficient out of range');
        tokens[listed++] = tokenOf(0, (run << 4) | size, bitsOf(value, size));
        run = 0;
      }
      if (run > 0) tokens[listed++] = tokenOf(0, END, 0);
    }
  return tokens.subarray(0, listed);
}

/** Of a block: one for each coefficient and its end. */
const MOST_TOKENS = BLOCK + 1;

/** Twice the room where another block might not have any. */
function roomier(tokens: Uint32Array): Uint32Array<ArrayBuffer> {
  const larger = new Uint32Array(tokens.length * 2);
  larger.set(tokens);
  return larger;
}

/** The codes of DC and AC that make these shortest, and how many bits they come to. */
function codesFor(tokens: Uint32Array): { dc: Coder; ac: Coder; bits: number } {
  const frequencies = [new Uint32Array(256), new Uint32Array(256)];
  let bits = 0;
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i];
    frequencies[isDc(token) ? 0 : 1][symbolIn(token)]++;
    bits += sizeIn(token);
  }
  const [dc, ac] = frequencies.map(shortestCodes);
  for (const [i, { length }] of [dc, ac].entries())
    bits += frequencies[i].reduce((sum, many, symbol) => sum + many * length[symbol], 0);
  return { dc, ac, bits };
}

/** @param flatBits bits of zero behind every block: those of its colour */
function written(
  tokens: Uint32Array,
  { dc, ac, bits }: ReturnType<typeof codesFor>,
  blocks: number,
  flatBits: number,
) {
  const out = new BitsWritten(bits + blocks * flatBits);
  for (let i = 0; i < tokens.length; i++) {
    const token = tokens[i];
    const symbol = symbolIn(token);
    if (isDc(token)) {
      if (i > 0) out.put(0, flatBits);
      out.put(dc.code[symbol], dc.length[symbol]);
    } else out.put(ac.code[symbol], ac.length[symbol]);
    out.put(bitsIn(token), sizeIn(token));
  }
  out.put(0, flatBits);
  return out.stuffed();
}

/**
 * A baseline JPEG of luminance that was read, from its quantisation table to its end: what stands behind SOI and the
 * metadata. Where colour is wanted, it is none: each of its blocks is flat.
 * @param channels 1: grey; 3: YCbCr
 * @throws Unusual where a baseline JPEG cannot hold a coefficient
 */
export function baselineJpeg(luminance: Luminance, channels: 1 | 3): Buffer {
  const tokens = tokensOf(luminance);
  const codes = codesFor(tokens);
  const flat = shortestCodes(Uint32Array.from({ length: 256 }, (_, symbol) => (symbol === 0 ? 1 : 0)));
  const blocks = Math.ceil(luminance.width / EDGE) * Math.ceil(luminance.height / EDGE);
  // two blocks of two codes, of which each is a single zero
  const flatBits = channels === 3 ? 4 : 0;
  const tables = [table(0x00, codes.dc), table(0x10, codes.ac)];
  if (channels === 3) tables.push(table(0x01, flat), table(0x11, flat));
  const { steps } = luminance;
  return Buffer.concat([
    segment(0xdb, [0, ...steps]),
    frame(luminance, channels),
    segment(0xc4, tables.flat()),
    scan(channels),
    written(tokens, codes, blocks, flatBits),
    Buffer.from([0xff, 0xd9]),
  ]);
}

const table = (key: number, { counts, symbols }: Coder): number[] => [key, ...counts, ...symbols];

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

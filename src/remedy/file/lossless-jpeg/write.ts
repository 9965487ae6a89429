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

/** Takes a symbol, and the bits that follow it. */
type Take = (symbol: number, value: number, size: number) => void;

const sizeOf = (value: number): number => 32 - Math.clz32(Math.abs(value));
/** Negative numbers are written less one (T.81, section F.1.2.1). */
const bitsOf = (value: number, size: number): number => (value < 0 ? value + (1 << size) - 1 : value);

/** Goes over all that is coded, block by block. @throws Unusual where a baseline JPEG cannot hold a coefficient */
function coded(
  { width, height, across, coefficients }: Luminance,
  dc: Take,
  ac: Take,
  afterBlock: () => void,
): void {
  const [columns, rows] = [Math.ceil(width / EDGE), Math.ceil(height / EDGE)];
  let before = 0;
  for (let y = 0; y < rows; y++)
    for (let x = 0; x < columns; x++) {
      const at = (y * across + x) * BLOCK;
      const difference = coefficients[at] - before;
      const size = sizeOf(difference);
      if (size > MOST_DC) throw new Unusual('a coefficient out of range');
      dc(size, bitsOf(difference, size), size);
      before = coefficients[at];
      codedAc(coefficients, at, ac);
      afterBlock();
    }
}

function codedAc(coefficients: Int16Array, at: number, ac: Take): void {
  let run = 0;
  for (let i = at + 1; i < at + BLOCK; i++) {
    const value = coefficients[i];
    if (value === 0) {
      run++;
      continue;
    }
    for (; run > 15; run -= 16) ac(ZEROS, 0, 0);
    const size = sizeOf(value);
    if (size > MOST_AC) throw new Unusual('a coefficient out of range');
    ac((run << 4) | size, bitsOf(value, size), size);
    run = 0;
  }
  if (run > 0) ac(END, 0, 0);
}

/** How often each symbol comes, and how many bits follow the symbols in all. */
class Count {
  readonly frequencies = new Uint32Array(256);
  following = 0;
  readonly take: Take = (symbol, _, size) => {
    this.frequencies[symbol]++;
    this.following += size;
  };
  bits({ length }: Coder): number {
    return this.frequencies.reduce((sum, many, symbol) => sum + many * length[symbol], this.following);
  }
}

/**
 * A baseline JPEG of luminance that was read, from its quantisation table to its end: what stands behind SOI and the
 * metadata. Where colour is wanted, it is none: each of its blocks is flat.
 * @param channels 1: grey; 3: YCbCr
 * @throws Unusual where a baseline JPEG cannot hold a coefficient
 */
export function baselineJpeg(luminance: Luminance, channels: 1 | 3): Buffer {
  const [dcCount, acCount] = [new Count(), new Count()];
  let blocks = 0;
  coded(luminance, dcCount.take, acCount.take, () => blocks++);
  const [dc, ac] = [dcCount, acCount].map(({ frequencies }) => shortestCodes(frequencies));
  const flat = shortestCodes(Uint32Array.from({ length: 256 }, (_, symbol) => (symbol === 0 ? 1 : 0)));
  // two blocks of two codes, of which each is a single zero
  const flatBits = channels === 3 ? 4 : 0;
  const out = new BitsWritten(dcCount.bits(dc) + acCount.bits(ac) + blocks * flatBits);
  const write =
    ({ code, length }: Coder): Take =>
    (symbol, value, size) => {
      out.put(code[symbol], length[symbol]);
      out.put(value, size);
    };
  coded(luminance, write(dc), write(ac), () => out.put(0, flatBits));
  const tables = [table(0x00, dc), table(0x10, ac)];
  if (channels === 3) tables.push(table(0x01, flat), table(0x11, flat));
  const { steps } = luminance;
  return Buffer.concat([
    segment(0xdb, [0, ...steps]),
    frame(luminance, channels),
    segment(0xc4, tables.flat()),
    scan(channels),
    out.stuffed(),
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

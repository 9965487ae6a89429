// no-unit-test: index.test.ts and the outside checks read again what is taken from here
import { BitsWritten } from './bits-write';
import type { CodeList } from './codes-read';
import { bitsFor, shortestCodes } from './codes-write';
import { Tokens } from './tokens';
import { BLOCK } from './zigzag';

/** The blocks of a picture, each by its place, row by row: DC as numbers, AC as a baseline JPEG codes it. */
export interface CodedBlocks {
  dc: Int16Array;
  /** The codes that AC is written by. */
  codes: CodeList;
  /** Where the AC of a block stands in `bytes`, in bits, and how many they are. */
  starts: Uint32Array;
  lengths: Uint16Array;
  /** Zeros stand behind the end, four at least. */
  bytes: Uint8Array;
}

/** Room for so many blocks, whose AC stands in these bytes already. */
export const codedIn = (bytes: Uint8Array, codes: CodeList, blocks: number): CodedBlocks => ({
  ...{ bytes, codes },
  dc: new Int16Array(blocks),
  starts: new Uint32Array(blocks),
  lengths: new Uint16Array(blocks),
});

/**
 * Codes blocks of which there are coefficients, as short as can be.
 * @param coefficients block by block, in zigzag order; the last of a row may lie beyond the picture
 * @param across blocks in a row of them, of which the first `columns` are the picture's
 * @throws Unusual where a baseline JPEG cannot hold one
 */
export function codedAnew(
  coefficients: Int16Array,
  across: number,
  columns: number,
  rows: number,
): CodedBlocks {
  const tokens = new Tokens(coefficients.length >> 3);
  const ends = new Uint32Array(columns * rows);
  const begins = (place: number) => (Math.floor(place / columns) * across + (place % columns)) * BLOCK;
  for (let place = 0; place < ends.length; place++) {
    tokens.takeBlock(coefficients, begins(place));
    ends[place] = tokens.length;
  }
  const codes = shortestCodes(tokens.frequencies);
  const out = new BitsWritten(bitsFor(codes, tokens.frequencies));
  const coded = codedIn(out.bytes, codes, ends.length);
  for (let place = 0, from = 0; place < ends.length; from = ends[place++]) {
    coded.dc[place] = coefficients[begins(place)];
    coded.starts[place] = out.bits;
    out.putTokens(codes, tokens.all, from, ends[place]);
    coded.lengths[place] = out.bits - coded.starts[place];
  }
  out.fill();
  return coded;
}

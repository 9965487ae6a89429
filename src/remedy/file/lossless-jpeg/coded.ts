// no-unit-test: index.test.ts and the outside checks read again what is taken from here
import { BitsWritten } from './bits-write';
import type { CodeList } from './codes-read';
import { bitsFor, shortestCodes } from './codes-write';
import { Tokens } from './tokens';
import type { Workspace } from './workspace';
import { BLOCK } from './zigzag';

/**
 * The blocks of a picture, each by its place, row by row: DC as numbers, AC as a baseline JPEG codes it. All of it lies
 * in a workspace, and here is where.
 */
export interface CodedBlocks {
  workspace: Workspace;
  blocks: number;
  /** The codes that AC is written by. */
  codes: CodeList;
  /** i16 each. */
  dc: number;
  /** Where the AC of a block begins in `bytes`, in bits (u32 each), and how many they are (u16 each). */
  starts: number;
  lengths: number;
  /** Eight bytes and more stand behind the end. */
  bytes: number;
}

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
  workspace: Workspace,
): CodedBlocks {
  const blocks = columns * rows;
  const tokens = new Tokens(coefficients.length >> 3);
  const ends = new Uint32Array(blocks);
  const begins = (place: number) => (Math.floor(place / columns) * across + (place % columns)) * BLOCK;
  for (let place = 0; place < blocks; place++) {
    tokens.takeBlock(coefficients, begins(place));
    ends[place] = tokens.length;
  }
  const codes = shortestCodes(tokens.frequencies);
  const out = new BitsWritten(bitsFor(codes, tokens.frequencies));
  const [dc, starts, lengths] = [new Int16Array(blocks), new Uint32Array(blocks), new Uint16Array(blocks)];
  for (let place = 0, from = 0; place < blocks; from = ends[place++]) {
    dc[place] = coefficients[begins(place)];
    starts[place] = out.bits;
    out.putTokens(codes, tokens.all, from, ends[place]);
    lengths[place] = out.bits - starts[place];
  }
  return {
    ...{ workspace, blocks, codes },
    dc: workspace.holding(dc),
    starts: workspace.holding(starts),
    lengths: workspace.holding(lengths),
    bytes: workspace.holding(out.filled()),
  };
}

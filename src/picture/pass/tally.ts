// no-unit-test: types and constants
import type { Level } from '../../shared/picture';

/** Different stored values with how often each occurs, one row a value: a picture without its places. */
export interface Cells {
  channels: number;
  length: number;
  /** Pixels. */
  count: Float64Array;
  /** `length` x `channels`. Grey, RGB and inks in steps of 1/255 (0-255), whatever the depth; Lab in its own units. */
  values: Float32Array;
}

/** The picture's 8 x 8 pixel blocks, row by row; those at the right and lower edge may be smaller. */
export interface Blocks {
  channels: number;
  columns: number;
  rows: number;
  /** Pixels of each block that count: 0 where all are transparent. */
  count: Uint8Array;
  /** Mean of one channel of a block that counts, in the units of `Cells.values`. */
  mean(block: number, channel: number): number;
  /** Means of `n` blocks from `first` on, `channels` a row, into `out`; 0 where no pixel counts. */
  read(first: number, n: number, out: Float32Array): void;
  /** What each block is: 0, or `WHITE` or `BLACK` (below) where its stored values are plain. */
  kinds: Uint8Array;
  /** RGB: least and most G of each block, two a block (0-255); empty for the others. */
  greens: Uint8Array;
}

/** Everything that the one walk over the pixels brings home. */
export interface Tally {
  /** Of the stored samples of the pixels that count; native units. */
  levels: Level[];
  /** Pixels that count: all but the fully transparent. */
  pixels: number;
  /** Fully transparent pixels, left out. */
  leftOut: number;
  /** Partly transparent pixels, composited on paper. */
  partial: number;
  /** RGB: largest difference between the channels of any one pixel, in steps of 1/255 (not rounded); else 0. */
  spread: number;
  /** Inks: largest sum of the four inks of any pixel, percent (0-400); else 0. */
  inkTotal: number;
  cells: Cells;
  blocks: Blocks;
}

/** Side of a block in pixels: a codec's own, so that its chroma noise averages out within one. */
export const BLOCK = 8;

/**
 * Kinds of a block: within 1/255 of plain white (inks: bare paper), of plain black (inks: full black ink). Deeper grey and
 * RGB are black within one step of 12 bits: a linear picture has many shades below 1/255.
 */
export const WHITE = 1;
export const BLACK = 2;

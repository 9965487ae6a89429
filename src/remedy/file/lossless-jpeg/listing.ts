// no-unit-test: index.test.ts and the outside checks read again what is listed
import { Unusual } from './unusual';
import { BLOCK } from './zigzag';

/** A run of 16 zeros, and the end of a block. */
export const ZEROS = 0xf0;
export const END = 0;
export const RUN = 16;

/** The most bits that a coefficient of a baseline JPEG may have (T.81, sections F.1.2.1 and F.1.2.2). */
export const MOST_AC = 10;

/** Of a block: one for each coefficient behind DC, and its end. */
const MOST_TOKENS = BLOCK;

/** A symbol and the bits that follow it as one number. How many follow is in the symbol's low half. */
export const symbolIn = (token: number): number => token >> MOST_AC;
export const bitsIn = (token: number): number => token & (2 ** MOST_AC - 1);
export const tokenOf = (symbol: number, bits: number): number => (symbol << MOST_AC) | bits;

/** How many bits a number takes; negative ones are written less one (T.81, section F.1.2.1). */
export const sizeOf = (value: number): number => 32 - Math.clz32(Math.abs(value));
export const bitsOf = (value: number, size: number): number => (value < 0 ? value + (1 << size) - 1 : value);

/**
 * All that is coded of a picture's blocks, as a baseline JPEG codes it. Blocks are listed in any order, each once, and
 * have their places, row by row.
 */
export class Listing {
  /** DC by place. */
  readonly dc: Int16Array;
  /** How often each symbol of AC comes. */
  readonly frequencies = new Uint32Array(256);
  /** Where the tokens of a block's AC begin, by place, and how many there are. */
  readonly starts: Uint32Array;
  readonly lengths: Uint8Array;
  tokens: Uint32Array;
  #listed = 0;

  /** @param likely tokens; it grows where there are more */
  constructor(blocks: number, likely: number) {
    this.dc = new Int16Array(blocks);
    this.starts = new Uint32Array(blocks);
    this.lengths = new Uint8Array(blocks);
    this.tokens = new Uint32Array(likely + MOST_TOKENS);
  }

  /** Where the next block's tokens go: there is room for them in `tokens`. */
  next(): number {
    if (this.#listed + MOST_TOKENS > this.tokens.length) {
      const larger = new Uint32Array(this.tokens.length * 2);
      larger.set(this.tokens);
      this.tokens = larger;
    }
    return this.#listed;
  }

  /** Lists the block whose tokens were put from `next` on and counted in `frequencies`. */
  take(place: number, dc: number, tokens: number): void {
    this.dc[place] = dc;
    this.starts[place] = this.#listed;
    this.lengths[place] = tokens;
    this.#listed += tokens;
  }

  /**
   * Lists a block of coefficients, in zigzag order from `at` on.
   * @throws Unusual where a baseline JPEG cannot hold one
   */
  takeBlock(place: number, coefficients: Int16Array, at: number): void {
    const start = this.next();
    const { tokens } = this;
    let to = start;
    let run = 0;
    for (let i = at + 1; i < at + BLOCK; i++) {
      const value = coefficients[i];
      if (value === 0) {
        run++;
        continue;
      }
      for (; run >= RUN; run -= RUN) tokens[to++] = tokenOf(ZEROS, 0);
      const size = sizeOf(value);
      if (size > MOST_AC) throw new Unusual('a coefficient out of range');
      tokens[to++] = tokenOf((run << 4) | size, bitsOf(value, size));
      run = 0;
    }
    if (run > 0) tokens[to++] = tokenOf(END, 0);
    for (let i = start; i < to; i++) this.frequencies[symbolIn(tokens[i])]++;
    this.take(place, coefficients[at], to - start);
  }
}

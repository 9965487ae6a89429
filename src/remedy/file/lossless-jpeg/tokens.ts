// no-unit-test: index.test.ts and the outside checks read again what is coded by them
import { Unusual } from './unusual';
import { BLOCK } from './zigzag';

/** A run of 16 zeros, and the end of a block. */
export const ZEROS = 0xf0;
const END = 0;
export const RUN = 16;

/** The most bits that a coefficient of a baseline JPEG may have (T.81, sections F.1.2.1 and F.1.2.2). */
export const MOST_AC = 10;

/** Of a block: one for each coefficient behind DC, and its end. */
const MOST_TOKENS = BLOCK;

/** A symbol and the bits that follow it as one number. How many follow is in the symbol's low half. */
export const symbolIn = (token: number): number => token >> MOST_AC;
export const bitsIn = (token: number): number => token & (2 ** MOST_AC - 1);
const tokenOf = (symbol: number, bits: number): number => (symbol << MOST_AC) | bits;

/** How many bits a number takes; negative ones are written less one (T.81, section F.1.2.1). */
export const sizeOf = (value: number): number => 32 - Math.clz32(Math.abs(value));
export const bitsOf = (value: number, size: number): number => (value < 0 ? value + (1 << size) - 1 : value);

/** Coefficients behind DC as a baseline JPEG codes them, before there are codes: block after block. */
export class Tokens {
  /** How often each symbol comes. */
  readonly frequencies = new Uint32Array(256);
  all: Uint32Array;
  length = 0;

  /** @param likely how many; it grows where there are more */
  constructor(likely: number) {
    this.all = new Uint32Array(likely + MOST_TOKENS);
  }

  /**
   * Takes a block of coefficients, in zigzag order from `at` on.
   * @throws Unusual where a baseline JPEG cannot hold one
   */
  takeBlock(coefficients: Int16Array, at: number): void {
    if (this.length + MOST_TOKENS > this.all.length) this.grow();
    const { all, frequencies } = this;
    let to = this.length;
    let run = 0;
    for (let i = at + 1; i < at + BLOCK; i++) {
      const value = coefficients[i];
      if (value === 0) {
        run++;
        continue;
      }
      for (; run >= RUN; run -= RUN) all[to++] = tokenOf(ZEROS, 0);
      const size = sizeOf(value);
      if (size > MOST_AC) throw new Unusual('a coefficient out of range');
      all[to++] = tokenOf((run << 4) | size, bitsOf(value, size));
      run = 0;
    }
    if (run > 0) all[to++] = tokenOf(END, 0);
    for (let i = this.length; i < to; i++) frequencies[symbolIn(all[i])]++;
    this.length = to;
  }

  private grow(): void {
    const larger = new Uint32Array(this.all.length * 2);
    larger.set(this.all);
    this.all = larger;
  }
}

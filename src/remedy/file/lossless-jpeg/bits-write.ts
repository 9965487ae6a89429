// no-unit-test: index.test.ts and the outside checks read again what it writes
import type { Coder } from './codes-write';
import { bitsIn, symbolIn } from './tokens';

/** As many bytes as a reader takes in at once. */
const BEYOND = 8;

/** Writes coded data bit by bit, from the most significant on. */
export class BitsWritten {
  private readonly bytes: Uint8Array;
  private length = 0;
  private pending = 0;
  private count = 0;

  /** @param bits as many as will be written */
  constructor(bits: number) {
    this.bytes = new Uint8Array(Math.ceil(bits / 8) + BEYOND);
  }

  /** The tokens from `from` on: of each its symbol's code and its bits. */
  putTokens({ code, length }: Coder, tokens: Uint32Array, from: number, to: number): void {
    const { bytes } = this;
    let { pending, count, length: at } = this;
    for (let i = from; i < to; i++) {
      const token = tokens[i];
      const symbol = symbolIn(token);
      // at most 15 bits wait, and a code has 16, its bits 10
      pending = (pending << length[symbol]) | code[symbol];
      count += length[symbol];
      if (count >= 16) {
        count -= 16;
        bytes[at++] = pending >>> (count + 8);
        bytes[at++] = pending >>> count;
      }
      const size = symbol & 15;
      pending = (pending << size) | bitsIn(token);
      count += size;
      if (count >= 16) {
        count -= 16;
        bytes[at++] = pending >>> (count + 8);
        bytes[at++] = pending >>> count;
      }
    }
    this.pending = pending;
    this.count = count;
    this.length = at;
  }

  /** How many were written. */
  get bits(): number {
    return this.length * 8 + this.count;
  }

  /** The bytes, the last filled with zeros, and more of these behind. */
  filled(): Uint8Array {
    const { bytes, length, pending, count } = this;
    if (count > 0) bytes[length] = (pending << 16) >>> (8 + count);
    if (count > 8) bytes[length + 1] = (pending << 16) >>> count;
    return bytes;
  }
}

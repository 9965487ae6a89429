// no-unit-test: index.test.ts and the outside checks read again what it writes
import type { Coder } from './codes-write';
import { bitsIn, symbolIn } from './listing';
import { stuffed } from './stuffing';

/** Writes coded data bit by bit, from the most significant on. */
export class BitsWritten {
  private readonly bytes: Uint8Array;
  private length = 0;
  private pending = 0;
  private count = 0;

  /** @param bits as many as will be written */
  constructor(bits: number) {
    this.bytes = new Uint8Array(Math.ceil(bits / 8));
  }

  /** @param count up to 16; no bit of `value` is set above them */
  put(value: number, count: number): void {
    this.pending = (this.pending << count) | value;
    this.count += count;
    while (this.count >= 8) {
      this.count -= 8;
      this.bytes[this.length++] = this.pending >>> this.count;
    }
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

  /** As they stand in a file: the last byte is filled with ones. */
  stuffed(): Buffer {
    const open = this.count & 7;
    if (open > 0) this.put(2 ** (8 - open) - 1, 8 - open);
    else this.put(0, 0);
    return stuffed(this.bytes);
  }
}

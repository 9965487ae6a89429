// no-unit-test: index.test.ts and the outside checks read again what it writes
import type { Coder } from './codes-write';
import { stuffed } from './stuffing';
import { bitsIn, symbolIn } from './tokens';

/** Bits that are taken at once where they only move. */
const STRIDE = 24;

/** More bytes than a reader takes in at once. */
const BEYOND = 8;

/** Writes coded data bit by bit, from the most significant on. */
export class BitsWritten {
  /** Zeros stand behind the end. */
  readonly bytes: Uint8Array;
  private length = 0;
  private pending = 0;
  private count = 0;

  /** @param bits as many as will be written */
  constructor(bits: number) {
    this.bytes = new Uint8Array(Math.ceil(bits / 8) + BEYOND);
  }

  /** @param count up to 24; no bit of `value` is set above them */
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

  /** Bits that stand elsewhere. @param at in bits; four bytes may be looked at behind the end */
  putBits(from: DataView, at: number, many: number): void {
    const { bytes } = this;
    let { pending, count, length } = this;
    const end = at + many;
    for (; at + STRIDE <= end; at += STRIDE) {
      // fewer than 8 bits wait
      pending = (pending << STRIDE) | ((from.getUint32(at >>> 3) << (at & 7)) >>> (32 - STRIDE));
      bytes[length++] = pending >>> (count + 16);
      bytes[length++] = pending >>> (count + 8);
      bytes[length++] = pending >>> count;
    }
    this.pending = pending;
    this.length = length;
    const left = end - at;
    if (left > 0) this.put((from.getUint32(at >>> 3) << (at & 7)) >>> (32 - left), left);
  }

  /** How many were written. */
  get bits(): number {
    return this.length * 8 + this.count;
  }

  /** Fills the last byte with ones. */
  fill(): void {
    const open = this.count & 7;
    if (open > 0) this.put(2 ** (8 - open) - 1, 8 - open);
    else this.put(0, 0);
  }

  /** As they stand in a file, once they are filled. */
  stuffed(): Buffer {
    return stuffed(this.bytes.subarray(0, this.length));
  }
}

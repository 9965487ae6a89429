// no-unit-test: index.test.ts and the outside checks read again what it writes
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

  /** As they stand in a file: the last byte is filled with ones. */
  stuffed(): Buffer {
    if (this.count > 0) this.put(2 ** (8 - this.count) - 1, 8 - this.count);
    return stuffed(this.bytes);
  }
}

// no-unit-test: index.test.ts and the outside checks read every coefficient through it
import type { Codes } from './codes-read';
import { type ScanData, seen } from './stuffing';
import { Unusual } from './unusual';

/** Reads the coded data of a progressive scan bit by bit, from the most significant on. */
export class Bits {
  /** In bits. */
  private at = 0;
  private part = 0;
  private readonly view: DataView;
  private readonly ends: Uint32Array;

  constructor(data: ScanData) {
    const { bytes, ends } = seen(data);
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    this.ends = ends;
  }

  /** Up to 16 bits; without any, 0. */
  take(count: number): number {
    const { at } = this;
    this.at = at + count;
    return count === 0 ? 0 : (this.view.getUint32(at >>> 3) << (at & 7)) >>> (32 - count);
  }

  /** @throws Unusual where no symbol has the code that stands here */
  symbol({ all }: Codes): number {
    const { at } = this;
    const code = all[(this.view.getUint32(at >>> 3) << (at & 7)) >>> 16];
    if (code === 0) throw new Unusual('no such code');
    this.at = at + (code >>> 8);
    return code & 0xff;
  }

  /** A number by its count of bits (T.81, section F.2.2.1): with its first bit clear it is negative. */
  signed(count: number): number {
    const value = this.take(count);
    return count > 0 && value < 1 << (count - 1) ? value - (1 << count) + 1 : value;
  }

  /** To be called after every block. @throws Unusual where more was read than there is */
  check(): void {
    if (this.at > this.ends[this.part] * 8) throw new Unusual('it breaks off');
  }

  /** Goes on behind the next restart marker. @throws Unusual where there is none */
  restart(): void {
    this.check();
    const { ends } = this;
    if (++this.part >= ends.length) throw new Unusual('a restart marker is missing');
    this.at = ends[this.part - 1] * 8;
  }

  /** @throws Unusual where restart markers follow for which there is no picture any more */
  end(): void {
    if (this.part !== this.ends.length - 1) throw new Unusual('more data than picture');
  }
}

// no-unit-test: index.test.ts and the outside checks read every coefficient through it
import type { Codes } from './codes-read';
import { LOOKED_AT } from './strides';
import type { ScanData } from './stuffing';
import { ZEROS } from './tokens';
import { Unusual } from './unusual';
import { BLOCK } from './zigzag';

/** Bits are counted in 32 bits. */
const MOST_BYTES = 2 ** 29;

/** Reads the coded data of a scan bit by bit, from the most significant on. */
export class Bits {
  /** In bits: what was read. */
  at = 0;
  private part = 0;
  private readonly view: DataView;

  constructor(private readonly data: ScanData) {
    const { bytes } = data;
    if (bytes.length >= MOST_BYTES) throw new Unusual('larger than is counted in bits');
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
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

  /**
   * Passes over the AC of a block of a sequential scan (T.81, section F.2.2.2), which any baseline JPEG may hold as it is.
   * @throws Unusual where it is damaged
   */
  passAc({ all, strides }: Codes): void {
    const { view } = this;
    let { at } = this;
    for (let k = 1; k < BLOCK; ) {
      const bits = view.getUint32(at >>> 3) << (at & 7);
      const stride = strides[bits >>> (32 - LOOKED_AT)];
      // one that goes beyond the block, or ends a block that is full, goes into the next
      if (stride > 0 && k + (stride >> 5) + (stride & 1) <= BLOCK) {
        at += (stride >> 1) & 15;
        k += stride >> 5;
        if ((stride & 1) !== 0) break;
        continue;
      }
      const code = all[bits >>> 16];
      if (code === 0) throw new Unusual('no such code');
      const size = code & 15;
      at += (code >>> 8) + size;
      k += ((code >> 4) & 15) + 1;
      if (size === 0) {
        if ((code & 0xff) !== ZEROS) break;
      } else if (k > BLOCK) throw new Unusual('more coefficients than a block has');
    }
    this.at = at;
  }

  /** To be called after every block. @throws Unusual where more was read than there is */
  check(): void {
    if (this.at > this.data.ends[this.part] * 8) throw new Unusual('it breaks off');
  }

  /** Goes on behind the next restart marker. @throws Unusual where there is none */
  restart(): void {
    this.check();
    const { ends } = this.data;
    if (++this.part >= ends.length) throw new Unusual('a restart marker is missing');
    this.at = ends[this.part - 1] * 8;
  }

  /** @throws Unusual where restart markers follow for which there is no picture any more */
  end(): void {
    if (this.part !== this.data.ends.length - 1) throw new Unusual('more data than picture');
  }
}

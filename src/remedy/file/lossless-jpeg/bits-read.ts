// no-unit-test: index.test.ts and the outside checks read every coefficient through it
import { END, MOST_AC, RUN, tokenOf, ZEROS } from './listing';
import type { ScanData } from './stuffing';
import { Unusual } from './unusual';
import { BLOCK } from './zigzag';

/** Codes by the next 16 bits: length x 256 + symbol; 0 where there is no such code. */
export type Codes = Uint16Array;

/** Reads the coded data of a scan bit by bit, from the most significant on. */
export class Bits {
  /** In bits. */
  private at = 0;
  private part = 0;
  private readonly view: DataView;

  constructor(private readonly data: ScanData) {
    const { bytes } = data;
    this.view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  }

  /** Up to 16 bits; without any, 0. */
  take(count: number): number {
    const { at } = this;
    this.at = at + count;
    return count === 0 ? 0 : (this.view.getUint32(at >>> 3) << (at & 7)) >>> (32 - count);
  }

  /** @throws Unusual where no symbol has the code that stands here */
  symbol(codes: Codes): number {
    const { at } = this;
    const code = codes[(this.view.getUint32(at >>> 3) << (at & 7)) >>> 16];
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
   * The AC of a block of a sequential scan (T.81, section F.2.2.2) as tokens, put into `tokens` from `from` on: they are
   * those that code it in any baseline JPEG, but for zeros behind the last number.
   * @param often counts their symbols
   * @returns where they end
   * @throws Unusual where it is damaged, or a baseline JPEG cannot hold it
   */
  ac(codes: Codes, tokens: Uint32Array, from: number, often: Uint32Array): number {
    const { view } = this;
    let { at } = this;
    let to = from;
    let zeros = 0;
    let k = 1;
    while (k < BLOCK) {
      const code = codes[(view.getUint32(at >>> 3) << (at & 7)) >>> 16];
      if (code === 0) throw new Unusual('no such code');
      at += code >>> 8;
      const symbol = code & 0xff;
      const size = symbol & 15;
      if (size === 0) {
        if (symbol !== ZEROS) break;
        zeros++;
        k += RUN;
        continue;
      }
      k += (symbol >> 4) + 1;
      if (k > BLOCK) throw new Unusual('more coefficients than a block has');
      if (size > MOST_AC) throw new Unusual('a coefficient out of range');
      for (; zeros > 0; zeros--) {
        tokens[to++] = tokenOf(ZEROS, 0);
        often[ZEROS]++;
      }
      often[symbol]++;
      tokens[to++] = tokenOf(symbol, (view.getUint32(at >>> 3) << (at & 7)) >>> (32 - size));
      at += size;
    }
    if (k < BLOCK || zeros > 0) {
      tokens[to++] = tokenOf(END, 0);
      often[END]++;
    }
    this.at = at;
    return to;
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

// no-unit-test: tested as one with pass.ts, against plain arithmetic
import type { Kernel } from './kernel';
import { BLOCK, type Blocks } from './tally';

/** Channels of a block's sums in the kernel's memory, used or not. */
const SUMS = 4;

/** The blocks of a picture, filled tile by tile from the kernel. */
export class TiledBlocks implements Blocks {
  readonly columns: number;
  readonly rows: number;
  readonly count: Uint8Array;
  readonly kinds: Uint8Array;
  readonly greens: Uint8Array;
  readonly #sums: Uint16Array;

  constructor(
    width: number,
    height: number,
    readonly channels: number,
  ) {
    this.columns = Math.ceil(width / BLOCK);
    this.rows = Math.ceil(height / BLOCK);
    const n = this.columns * this.rows;
    this.count = new Uint8Array(n);
    this.kinds = new Uint8Array(n);
    this.greens = new Uint8Array(channels === 3 ? n * 2 : 0);
    this.#sums = new Uint16Array(n * SUMS);
  }

  /** Takes the blocks of the tile at `x`, `y` (pixels), `width` pixels wide. */
  take({ memory, value }: Kernel, x: number, y: number, width: number): void {
    const first = (y / BLOCK) * this.columns + x / BLOCK;
    const n = Math.ceil(width / BLOCK);
    this.#sums.set(new Uint16Array(memory, value('SUMS'), n * SUMS), first * SUMS);
    this.count.set(new Uint8Array(memory, value('COUNTS'), n), first);
    this.kinds.set(new Uint8Array(memory, value('KINDS'), n), first);
    if (this.greens.length > 0) this.greens.set(new Uint8Array(memory, value('RANGES'), n * 2), first * 2);
  }

  mean(block: number, channel: number): number {
    return this.#sums[block * SUMS + channel] / this.count[block];
  }

  read(first: number, n: number, out: Float32Array): void {
    const { channels, count } = this;
    for (let i = first, to = 0; i < first + n; i++) {
      const share = count[i] > 0 ? 1 / count[i] : 0;
      for (let c = 0; c < channels; c++) out[to++] = this.#sums[i * SUMS + c] * share;
    }
  }
}

/** Blocks whose means are written one by one; none counted yet. */
export class PlainBlocks implements Blocks {
  readonly columns: number;
  readonly rows: number;
  readonly count: Uint8Array;
  readonly kinds: Uint8Array;
  readonly greens = new Uint8Array(0);
  /** `channels` a row. */
  readonly means: Float32Array;

  constructor(
    width: number,
    height: number,
    readonly channels: number,
  ) {
    this.columns = Math.ceil(width / BLOCK);
    this.rows = Math.ceil(height / BLOCK);
    this.count = new Uint8Array(this.columns * this.rows);
    this.kinds = new Uint8Array(this.count.length);
    this.means = new Float32Array(this.count.length * channels);
  }

  mean(block: number, channel: number): number {
    return this.means[block * this.channels + channel];
  }

  read(first: number, n: number, out: Float32Array): void {
    out.set(this.means.subarray(first * this.channels, (first + n) * this.channels));
  }
}

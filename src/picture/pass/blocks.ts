import type { Kernel } from './kernel';
import { BLOCK, type Blocks } from './tally';

/** Channels of a block's sums in the kernel's memory, used or not. */
const SUMS = 4;

/** The blocks of a picture, filled tile by tile from the kernel. */
export class TiledBlocks implements Blocks {
  readonly columns: number;
  readonly rows: number;
  readonly count: Uint8Array;
  readonly greens: Uint8Array;
  readonly #sums: Uint16Array;
  #means: Float32Array | null = null;

  constructor(
    width: number,
    height: number,
    readonly channels: number,
  ) {
    this.columns = Math.ceil(width / BLOCK);
    this.rows = Math.ceil(height / BLOCK);
    const n = this.columns * this.rows;
    this.count = new Uint8Array(n);
    this.greens = new Uint8Array(channels === 3 ? n * 2 : 0);
    this.#sums = new Uint16Array(n * SUMS);
  }

  /** Takes the blocks of the tile at `x`, `y` (pixels), `width` pixels wide. */
  take({ memory, value }: Kernel, x: number, y: number, width: number): void {
    const first = (y / BLOCK) * this.columns + x / BLOCK;
    const n = Math.ceil(width / BLOCK);
    this.#sums.set(new Uint16Array(memory, value('SUMS'), n * SUMS), first * SUMS);
    this.count.set(new Uint8Array(memory, value('COUNTS'), n), first);
    if (this.greens.length > 0) this.greens.set(new Uint8Array(memory, value('RANGES'), n * 2), first * 2);
  }

  mean(block: number, channel: number): number {
    return this.#sums[block * SUMS + channel] / this.count[block];
  }

  /** Made when first asked for: a picture without colour is judged without. */
  get means(): Float32Array {
    this.#means ??= this.#meansOfSums();
    return this.#means;
  }

  #meansOfSums(): Float32Array {
    const { channels, count } = this;
    const means = new Float32Array(count.length * channels);
    for (let i = 0, to = 0; i < count.length; i++) {
      const share = count[i] > 0 ? 1 / count[i] : 0;
      for (let c = 0; c < channels; c++) means[to++] = this.#sums[i * SUMS + c] * share;
    }
    return means;
  }
}

/** Blocks to be filled otherwise, none counted yet. */
export function emptyBlocks(width: number, height: number, channels: number): Blocks {
  const columns = Math.ceil(width / BLOCK);
  const rows = Math.ceil(height / BLOCK);
  const n = columns * rows;
  const means = new Float32Array(n * channels);
  const mean = (block: number, channel: number) => means[block * channels + channel];
  return { channels, columns, rows, count: new Uint8Array(n), mean, means, greens: new Uint8Array(0) };
}

// no-unit-test: tested as one with pass.ts, against plain arithmetic
import type { Level } from '../../shared/picture';
import type { Samples } from '../types';
import { FloatLevels } from './float';
import type { Kernel } from './kernel';

/** What the kernel's tile holds: the stored samples, narrowed ones (levels taken already), or a composite under a mask. */
export type TileKind = 'stored' | 'narrowed' | 'masked';

/** Brings a picture into the kernel tile by tile, as 8-bit samples on paper, whatever its depth and alpha. */
export class Tiles {
  readonly #stride: number;
  readonly #stored: Uint8Array;
  readonly #target: Uint8Array;
  readonly #bytes: number;
  readonly #floats: FloatLevels | null;

  constructor(
    readonly kernel: Kernel,
    readonly samples: Samples,
  ) {
    const { data, channels, alpha, width } = samples;
    this.#floats = data instanceof Float32Array ? new FloatLevels(channels, alpha) : null;
    this.#bytes = data.BYTES_PER_ELEMENT * (channels + (alpha ? 1 : 0));
    this.#stride = width * this.#bytes;
    this.#stored = new Uint8Array(data.buffer, data.byteOffset, data.byteLength);
    const direct = data instanceof Uint8Array && !alpha;
    this.#target = new Uint8Array(kernel.memory, kernel.value(direct ? 'TILE' : 'STORED'));
  }

  load(x: number, y: number, width: number, rows: number): TileKind {
    const { kernel, samples } = this;
    const { data, channels, alpha } = samples;
    const pixels = width * rows;
    if (this.#floats)
      this.#floats.copy(data as Float32Array, samples.width, x, y, width, rows, this.#deep(pixels));
    else this.#copy(x, y, width, rows);
    const deep = !(data instanceof Uint8Array);
    if (alpha) {
      const paper = samples.space === 'cmyk' ? 0 : deep ? 65535 : 255;
      const seenThrough = deep
        ? kernel.flatten16(pixels, channels, paper)
        : kernel.flatten8(pixels, channels, paper);
      if (seenThrough) return 'masked';
    }
    if (!deep) return 'stored';
    kernel.narrow(pixels * channels, channels);
    return 'narrowed';
  }

  /** Per channel, over the pixels that count, in the units of the samples. */
  levels(pixels: number): Level[] {
    if (this.#floats) return this.#floats.levels(pixels);
    const view = new DataView(this.kernel.memory, this.kernel.value('LEVELS'));
    return Array.from({ length: this.samples.channels }, (_, c) => ({
      min: pixels ? view.getUint32(c * 16, true) : 0,
      max: pixels ? view.getUint32(c * 16 + 4, true) : 0,
      mean: pixels ? view.getFloat64(c * 16 + 8, true) / pixels : 0,
    }));
  }

  #deep(pixels: number): Uint16Array {
    const { channels, alpha } = this.samples;
    return new Uint16Array(
      this.kernel.memory,
      this.kernel.value('STORED'),
      pixels * (channels + (alpha ? 1 : 0)),
    );
  }

  #copy(x: number, y: number, width: number, rows: number) {
    const row = width * this.#bytes;
    const from = y * this.#stride + x * this.#bytes;
    if (row === this.#stride) this.#target.set(this.#stored.subarray(from, from + rows * row));
    else
      for (let i = 0; i < rows; i++) {
        const at = from + i * this.#stride;
        this.#target.set(this.#stored.subarray(at, at + row), i * row);
      }
  }
}

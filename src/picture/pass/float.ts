// no-unit-test: tested as one with pass.ts, against plain arithmetic
import type { Level } from '../../shared/picture';

/** Floating-point samples (0-1 = black to white): brought to 16 bits for counting, with their own levels kept. */
export class FloatLevels {
  readonly #least: Float64Array;
  readonly #most: Float64Array;
  readonly #sum: Float64Array;

  constructor(
    readonly channels: number,
    readonly alpha: boolean,
  ) {
    this.#least = new Float64Array(channels).fill(Number.POSITIVE_INFINITY);
    this.#most = new Float64Array(channels).fill(Number.NEGATIVE_INFINITY);
    this.#sum = new Float64Array(channels);
  }

  /** Copies a tile of `from` (a raster `stride` pixels wide) as 16-bit samples; out of range is clamped, not-a-number is 0. */
  copy(
    from: Float32Array,
    stride: number,
    x: number,
    y: number,
    width: number,
    rows: number,
    to: Uint16Array,
  ): void {
    const { channels, alpha } = this;
    const step = channels + (alpha ? 1 : 0);
    let out = 0;
    for (let row = y; row < y + rows; row++) {
      let at = (row * stride + x) * step;
      for (let i = 0; i < width; i++, at += step) {
        const counts = !alpha || to16(from[at + channels]) > 0;
        for (let c = 0; c < channels; c++) {
          if (counts) this.#widen(c, from[at + c]);
          to[out++] = to16(from[at + c]);
        }
        if (alpha) to[out++] = to16(from[at + channels]);
      }
    }
  }

  levels(pixels: number): Level[] {
    return Array.from(this.#sum, (sum, c) =>
      pixels && this.#least[c] <= this.#most[c]
        ? { min: this.#least[c], max: this.#most[c], mean: sum / pixels }
        : { min: 0, max: 0, mean: 0 },
    );
  }

  #widen(channel: number, value: number) {
    if (!Number.isFinite(value)) return;
    if (value < this.#least[channel]) this.#least[channel] = value;
    if (value > this.#most[channel]) this.#most[channel] = value;
    this.#sum[channel] += value;
  }
}

function to16(value: number): number {
  return value > 0 ? (value < 1 ? Math.round(value * 65535) : 65535) : 0;
}

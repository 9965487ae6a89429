import { LAB_UNITS } from '../pass/lab';
import type { Samples } from '../types';

/**
 * Reads stored values as a picture's meaning takes them: grey, RGB and inks in steps of 1/255 whatever the depth (not
 * rounded), Lab in its own units, what is partly transparent laid on paper.
 */
export class Values {
  /** Samples a pixel, alpha with them. */
  readonly step: number;
  readonly #scale: number[];
  readonly #paper: number[];
  readonly #opaque: number;

  constructor(private readonly samples: Samples) {
    const { data, channels, alpha, space } = samples;
    this.step = channels + (alpha ? 1 : 0);
    const lab = space === 'lab';
    const full = data instanceof Float32Array ? 1 : data instanceof Uint8Array ? 255 : 65535;
    this.#opaque = lab ? 32767 : full;
    this.#scale = Array.from({ length: channels }, (_, c) => (lab ? 1 / LAB_UNITS[c] : 255 / full));
    this.#paper = Array.from({ length: channels }, (_, c) =>
      lab ? (c === 0 ? 100 : 0) : space === 'cmyk' ? 0 : 255,
    );
  }

  /** How opaque pixel `i` (row by row) is, 0-1. */
  opacity(i: number): number {
    const { data, channels, alpha } = this.samples;
    return alpha ? limited(data[i * this.step + channels] / this.#opaque, 1) : 1;
  }

  /** Pixels `first` to `first + n` into `out`, a row each. */
  read(first: number, n: number, out: Float32Array): void {
    const { step } = this;
    const { data, channels, alpha, space } = this.samples;
    const most = space === 'lab' ? null : 255;
    for (let i = first, to = 0, at = first * step; i < first + n; i++, at += step) {
      const opacity = alpha ? this.opacity(i) : 1;
      for (let c = 0; c < channels; c++, to++) {
        const value = data[at + c] * this.#scale[c];
        const known = most === null ? value : limited(value, most);
        out[to] = opacity === 1 ? known : known * opacity + this.#paper[c] * (1 - opacity);
      }
    }
  }
}

/** Not-a-number is nothing, as where it is counted. */
const limited = (value: number, most: number) => (value > 0 ? Math.min(value, most) : 0);

const FINE = 16;

/** One channel of grey: lightness by a table, without any colour. */
export class GreyCurve {
  readonly #lightness: Float32Array;

  /** @param lightness L* of a stored value (0-1) */
  constructor(readonly lightness: (stored: number) => number) {
    this.#lightness = Float32Array.from({ length: 255 * FINE + 1 }, (_, i) => lightness(i / (255 * FINE)));
  }

  lab(values: Float32Array, n: number, out: Float32Array): void {
    for (let i = 0; i < n; i++) {
      out[i * 3] = this.#lightness[(values[i] * FINE + 0.5) | 0];
      out[i * 3 + 1] = 0;
      out[i * 3 + 2] = 0;
    }
  }
}

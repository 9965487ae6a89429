/** Running sums of stored values with their lightness: mean, covariance, and the scatter that lightness does not explain. */
export class Moments {
  weight = 0;
  /** Sums of the channels and L*, then of their products, row by row. */
  readonly #sum: Float64Array;
  readonly #products: Float64Array;
  readonly #size: number;
  /** First value seen: sums are taken from there, so that little is lost to rounding. */
  readonly #origin: Float64Array;

  constructor(readonly channels: number) {
    this.#size = channels + 1;
    this.#sum = new Float64Array(this.#size);
    this.#origin = new Float64Array(this.#size);
    this.#products = new Float64Array(this.#size * this.#size);
  }

  reset() {
    this.weight = 0;
    this.#sum.fill(0);
    this.#products.fill(0);
  }

  add(values: Float32Array, at: number, L: number, count: number) {
    const n = this.#size;
    const origin = this.#origin;
    if (this.weight === 0) {
      for (let c = 0; c < n - 1; c++) origin[c] = values[at + c];
      origin[n - 1] = L;
    }
    this.weight += count;
    for (let i = 0; i < n; i++) {
      const v = count * ((i < n - 1 ? values[at + i] : L) - origin[i]);
      this.#sum[i] += v;
      for (let j = 0; j <= i; j++)
        this.#products[i * n + j] += v * ((j < n - 1 ? values[at + j] : L) - origin[j]);
    }
  }

  mean(): Float64Array {
    return Float64Array.from(
      { length: this.channels },
      (_, c) => this.#origin[c] + this.#sum[c] / this.weight,
    );
  }

  /** Covariance of the channels, row by row. */
  covariance(): Float64Array {
    const { channels } = this;
    return Float64Array.from({ length: channels * channels }, (_, i) =>
      this.#joint(Math.floor(i / channels), i % channels),
    );
  }

  /** Direction and variance of the widest scatter once what goes with lightness is taken out. */
  acrossTone(): { axis: Float64Array; variance: number } {
    const { channels } = this;
    const rest = this.covariance();
    const varianceOfL = this.#joint(channels, channels);
    if (varianceOfL > 1e-9)
      for (let i = 0; i < channels; i++)
        for (let j = 0; j < channels; j++)
          rest[i * channels + j] -= (this.#joint(i, channels) * this.#joint(j, channels)) / varianceOfL;
    return widest(rest, channels);
  }

  #joint(i: number, j: number): number {
    const [row, column] = i >= j ? [i, j] : [j, i];
    const mean = (k: number) => this.#sum[k] / this.weight;
    return this.#products[row * this.#size + column] / this.weight - mean(i) * mean(j);
  }
}

/** Largest eigenvalue of a symmetric matrix and its direction, by power iteration. */
function widest(matrix: Float64Array, n: number): { axis: Float64Array; variance: number } {
  // starts from the row of the largest diagonal entry, which is never at right angles to the answer
  let start = 0;
  for (let i = 1; i < n; i++) if (matrix[i * n + i] > matrix[start * n + start]) start = i;
  let axis = Float64Array.from(matrix.subarray(start * n, start * n + n));
  let variance = 0;
  for (let step = 0; step < 50; step++) {
    const next = new Float64Array(n);
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) next[i] += matrix[i * n + j] * axis[j];
    const length = Math.hypot(...next);
    if (!(length > 1e-12)) return { axis: new Float64Array(n), variance: 0 };
    variance = length / Math.hypot(...axis);
    axis = next.map(v => v / length);
  }
  return { axis, variance };
}

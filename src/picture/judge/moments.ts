/**
 * Weighted sums of rows of values, many groups at once in flat arrays: mean and covariance of each, and the scatter that
 * the last value of a row does not explain. Sums are taken from the middle of the values' range, where little is lost.
 */
export class Moments {
  readonly #weight: Float64Array;
  readonly #sum: Float64Array;
  /** Lower triangles of the products, row by row. */
  readonly #product: Float64Array;
  readonly #triangle: number;

  /** @param size values a row; `origin`: a value near all of them */
  constructor(
    readonly groups: number,
    readonly size: number,
    readonly origin: number,
  ) {
    this.#triangle = (size * (size + 1)) / 2;
    this.#weight = new Float64Array(groups);
    this.#sum = new Float64Array(groups * size);
    this.#product = new Float64Array(groups * this.#triangle);
  }

  reset(group: number): void {
    this.#weight[group] = 0;
    this.#sum.fill(0, group * this.size, (group + 1) * this.size);
    this.#product.fill(0, group * this.#triangle, (group + 1) * this.#triangle);
  }

  add(group: number, row: Float64Array, weight: number): void {
    const { size, origin } = this;
    this.#weight[group] += weight;
    let product = group * this.#triangle;
    const sum = group * size;
    for (let i = 0; i < size; i++) {
      const v = weight * (row[i] - origin);
      this.#sum[sum + i] += v;
      for (let j = 0; j <= i; j++) this.#product[product++] += v * (row[j] - origin);
    }
  }

  weight(group: number): number {
    return this.#weight[group];
  }

  mean(group: number, value: number): number {
    return this.origin + this.#sum[group * this.size + value] / this.#weight[group];
  }

  covariance(group: number, i: number, j: number): number {
    const [row, column] = i >= j ? [i, j] : [j, i];
    const weight = this.#weight[group];
    const product = this.#product[group * this.#triangle + (row * (row + 1)) / 2 + column];
    const mean = (value: number) => this.#sum[group * this.size + value] / weight;
    return product / weight - mean(i) * mean(j);
  }

  /** Direction and variance of the widest scatter of a row's other values once what goes with its last is taken out. */
  acrossLast(group: number): { axis: Float64Array; variance: number } {
    const last = this.size - 1;
    const rest = new Float64Array(last * last);
    const explained = this.covariance(group, last, last);
    for (let i = 0; i < last; i++)
      for (let j = 0; j < last; j++) {
        rest[i * last + j] = this.covariance(group, i, j);
        if (explained > 1e-9)
          rest[i * last + j] -=
            (this.covariance(group, i, last) * this.covariance(group, j, last)) / explained;
      }
    return widest(rest, last);
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

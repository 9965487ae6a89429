import { quickLabF } from './cie';

/** Table steps per 8-bit step: block means lie between whole values. */
const FINE = 8;

/** RGB whose channels add up in light, as displays' do: a tone curve each, then a matrix. Exact to 0.01. */
export class AdditiveRgb {
  readonly #curves: Float32Array[];

  /**
   * @param light light (0-1) of a stored value (0-1), for R, G, B
   * @param matrix X/Xw, Y/Yw, Z/Zw of full R, G, B, row by row
   */
  constructor(
    readonly light: readonly ((stored: number) => number)[],
    readonly matrix: readonly number[],
  ) {
    this.#curves = light.map(curve =>
      Float32Array.from({ length: 255 * FINE + 1 }, (_, i) => curve(i / (255 * FINE))),
    );
  }

  lab(values: Float32Array, n: number, out: Float32Array): void {
    const [red, green, blue] = this.#curves;
    const [xr, xg, xb, yr, yg, yb, zr, zg, zb] = this.matrix;
    for (let i = 0; i < n * 3; i += 3) {
      const r = red[(values[i] * FINE + 0.5) | 0];
      const g = green[(values[i + 1] * FINE + 0.5) | 0];
      const b = blue[(values[i + 2] * FINE + 0.5) | 0];
      const fx = quickLabF(xr * r + xg * g + xb * b);
      const fy = quickLabF(yr * r + yg * g + yb * b);
      const fz = quickLabF(zr * r + zg * g + zb * b);
      out[i] = 116 * fy - 16;
      out[i + 1] = 500 * (fx - fy);
      out[i + 2] = 200 * (fy - fz);
    }
  }
}

/** Nine numbers, row by row. */
export type Matrix3 = Float64Array;

export function matrix3(...values: number[]): Matrix3 {
  if (values.length !== 9) throw new Error(`a 3 x 3 matrix has nine numbers, not ${values.length}`);
  return Float64Array.from(values);
}

export const diagonal = (x: number, y: number, z: number): Matrix3 => matrix3(x, 0, 0, 0, y, 0, 0, 0, z);

/** `m` times the column vector `v`, written into `out`, which may be `v` itself. */
export function apply(m: Matrix3, v: ArrayLike<number>, out: Float64Array): Float64Array {
  const x = v[0];
  const y = v[1];
  const z = v[2];
  out[0] = m[0] * x + m[1] * y + m[2] * z;
  out[1] = m[3] * x + m[4] * y + m[5] * z;
  out[2] = m[6] * x + m[7] * y + m[8] * z;
  return out;
}

/** The matrix that does `second` after `first`. */
export function multiply(second: Matrix3, first: Matrix3): Matrix3 {
  const out = new Float64Array(9);
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++)
      out[i * 3 + j] =
        second[i * 3] * first[j] + second[i * 3 + 1] * first[3 + j] + second[i * 3 + 2] * first[6 + j];
  return out;
}

/** @throws where the matrix has no inverse */
export function invert(m: Matrix3): Matrix3 {
  const [a, b, c, d, e, f, g, h, i] = m;
  const A = e * i - f * h;
  const B = f * g - d * i;
  const C = d * h - e * g;
  const determinant = a * A + b * B + c * C;
  if (!(Math.abs(determinant) > 1e-14)) throw new Error('this matrix has no inverse');
  return matrix3(
    A,
    c * h - b * i,
    b * f - c * e,
    B,
    a * i - c * g,
    c * d - a * f,
    C,
    b * g - a * h,
    a * e - b * d,
  ).map(value => value / determinant);
}

/** Solves `m x = v`. */
export const solve = (m: Matrix3, v: ArrayLike<number>): Float64Array =>
  apply(invert(m), v, new Float64Array(3));

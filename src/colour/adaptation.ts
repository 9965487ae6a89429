import { apply, diagonal, invert, type Matrix3, matrix3, multiply } from './matrix';

/** CAT16 (Li et al. 2017; CIE 248:2022): the chromatic adaptation of CIECAM16. */
const CAT16 = matrix3(
  0.401288,
  0.650173,
  -0.051461, //
  -0.250268,
  1.204414,
  0.045854, //
  -0.002079,
  0.048952,
  0.953127,
);

/** Linear Bradford, the adaptation of ICC profiles (ICC.1:2010, Annex E). */
const BRADFORD = matrix3(
  0.8951,
  0.2664,
  -0.1614, //
  -0.7502,
  1.7135,
  0.0367, //
  0.0389,
  -0.0685,
  1.0296,
);

type White = ArrayLike<number>;

/** XYZ seen under white `from` -> the corresponding XYZ under white `to`; the observer fully adapted (D = 1). */
export const cat16 = (from: White, to: White): Matrix3 => adaptation(CAT16, from, to);

export const bradford = (from: White, to: White): Matrix3 => adaptation(BRADFORD, from, to);

function adaptation(cones: Matrix3, from: White, to: White): Matrix3 {
  const a = apply(cones, from, new Float64Array(3));
  const b = apply(cones, to, new Float64Array(3));
  return multiply(invert(cones), multiply(diagonal(b[0] / a[0], b[1] / a[1], b[2] / a[2]), cones));
}

import { bradford } from './adaptation';
import { D50, labToXyz, xyzToLab } from './lab';
import { apply, diagonal, invert, type Matrix3, matrix3, multiply, solve } from './matrix';
import { srgbCurve } from './tone-curves';

/** Primaries and white (D65) of IEC 61966-2-1 as x, y. */
const RED = [0.64, 0.33];
const GREEN = [0.3, 0.6];
const BLUE = [0.15, 0.06];
const WHITE = [0.3127, 0.329];

const xyz = ([x, y]: number[]) => [x / y, 1, (1 - x - y) / y];

/** Linear sRGB 0-1 -> XYZ (Y = 100) adapted to D50 by Bradford, as ICC profiles do; R = G = B is exactly neutral. */
export const SRGB_TO_XYZ: Matrix3 = toXyz();
export const XYZ_TO_SRGB: Matrix3 = invert(SRGB_TO_XYZ);

function toXyz(): Matrix3 {
  const [r, g, b, w] = [RED, GREEN, BLUE, WHITE].map(xyz);
  const primaries = matrix3(r[0], g[0], b[0], r[1], g[1], b[1], r[2], g[2], b[2]);
  const [sr, sg, sb] = solve(primaries, w);
  const d65 = multiply(primaries, diagonal(sr * 100, sg * 100, sb * 100));
  return multiply(
    bradford(
      w.map(value => value * 100),
      D50,
    ),
    d65,
  );
}

/** Encoded sRGB 0-1 -> CIELAB D50, written into `out`, which may be `rgb` itself. */
export function srgbToLab(rgb: ArrayLike<number>, out: Float64Array): Float64Array {
  const r = srgbCurve.decode(rgb[0]);
  const g = srgbCurve.decode(rgb[1]);
  const b = srgbCurve.decode(rgb[2]);
  out[0] = r;
  out[1] = g;
  out[2] = b;
  return xyzToLab(apply(SRGB_TO_XYZ, out, out), out);
}

/** CIELAB D50 -> encoded sRGB, clipped to 0-1 channel by channel, written into `out`, which may be `lab` itself. */
export function labToSrgb(lab: ArrayLike<number>, out: Float64Array): Float64Array {
  apply(XYZ_TO_SRGB, labToXyz(lab, out), out);
  for (let i = 0; i < 3; i++) out[i] = Math.min(1, Math.max(0, srgbCurve.encode(out[i])));
  return out;
}

/**
 * CIELAB (CIE 015:2018, 8.2.1) with the exact constants of CIE 15:2004 and later. The white is that of the ICC profile
 * connection space, D50 as ICC.1 rounds it; XYZ has Y = 100 for the perfect diffuser.
 */
export const D50: readonly [number, number, number] = [96.42, 100, 82.49];

const EPSILON = 216 / 24389;
const KAPPA = 24389 / 27;

const root = (t: number) => (t > EPSILON ? Math.cbrt(t) : (KAPPA * t + 16) / 116);
const cube = (f: number) => (f * f * f > EPSILON ? f * f * f : (116 * f - 16) / KAPPA);

/** XYZ -> L*, a*, b*, written into `out`, which may be `xyz` itself. */
export function xyzToLab(xyz: ArrayLike<number>, out: Float64Array): Float64Array {
  const x = root(xyz[0] / D50[0]);
  const y = root(xyz[1] / D50[1]);
  const z = root(xyz[2] / D50[2]);
  out[0] = 116 * y - 16;
  out[1] = 500 * (x - y);
  out[2] = 200 * (y - z);
  return out;
}

/** L*, a*, b* -> XYZ, written into `out`, which may be `lab` itself. */
export function labToXyz(lab: ArrayLike<number>, out: Float64Array): Float64Array {
  const y = (lab[0] + 16) / 116;
  const x = y + lab[1] / 500;
  const z = y - lab[2] / 200;
  out[0] = D50[0] * cube(x);
  out[1] = D50[1] * cube(y);
  out[2] = D50[2] * cube(z);
  return out;
}

/** Y (0-100) -> L*. */
export const lightness = (Y: number): number => 116 * root(Y / 100) - 16;

/** L* -> Y (0-100). */
export const luminance = (L: number): number => 100 * cube((L + 16) / 116);

export const chroma = (a: number, b: number): number => Math.hypot(a, b);

/** Hue angle in degrees, 0-360. */
export function hue(a: number, b: number): number {
  const degrees = (Math.atan2(b, a) * 180) / Math.PI;
  return degrees < 0 ? degrees + 360 : degrees;
}

/** L*, a*, b* -> L*, C*, h in degrees, written into `out`, which may be `lab` itself. */
export function labToLch(lab: ArrayLike<number>, out: Float64Array): Float64Array {
  const a = lab[1];
  const b = lab[2];
  out[0] = lab[0];
  out[1] = chroma(a, b);
  out[2] = hue(a, b);
  return out;
}

/** L*, C*, h in degrees -> L*, a*, b*, written into `out`, which may be `lch` itself. */
export function lchToLab(lch: ArrayLike<number>, out: Float64Array): Float64Array {
  const c = lch[1];
  const h = (lch[2] * Math.PI) / 180;
  out[0] = lch[0];
  out[1] = c * Math.cos(h);
  out[2] = c * Math.sin(h);
  return out;
}

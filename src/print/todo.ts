// Until colour/ has these: CIE 15 formulas and sRGB (IEC 61966-2-1) by its D50 matrix.
const W = [96.42, 100, 82.49];
export function xyzToLab(xyz: ArrayLike<number>, out: Float64Array) {
  const f = (t: number) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116);
  const x = f(xyz[0] / W[0]),
    y = f(xyz[1] / W[1]),
    z = f(xyz[2] / W[2]);
  out[0] = 116 * y - 16;
  out[1] = 500 * (x - y);
  out[2] = 200 * (y - z);
}
export function labToXyz(lab: ArrayLike<number>, out: Float64Array) {
  const g = (f: number) => (f ** 3 > 216 / 24389 ? f ** 3 : (116 * f - 16) / (24389 / 27));
  const fy = (lab[0] + 16) / 116;
  out[0] = W[0] * g(fy + lab[1] / 500);
  out[1] = W[1] * g(fy);
  out[2] = W[2] * g(fy - lab[2] / 200);
}
const M = [
  [3.1338561, -1.6168667, -0.4906146],
  [-0.9787684, 1.9161415, 0.033454],
  [0.0719453, -0.2289914, 1.4052427],
];
export function labToSrgb(L: number, a: number, b: number): number[] {
  const xyz = new Float64Array(3);
  labToXyz([L, a, b], xyz);
  return M.map(r => {
    const v = (r[0] * xyz[0] + r[1] * xyz[1] + r[2] * xyz[2]) / 100;
    const e = v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055;
    return Math.min(1, Math.max(0, e));
  });
}
export const luminance = (L: number) => (L > 8 ? ((L + 16) / 116) ** 3 : L / (24389 / 27)) * 100;
export const lightness = (Y: number) =>
  Y / 100 > 216 / 24389 ? 116 * Math.cbrt(Y / 100) - 16 : ((24389 / 27) * Y) / 100;
const N = [
  [0.4360747, 0.3850649, 0.1430804],
  [0.2225045, 0.7168786, 0.0606169],
  [0.0139322, 0.0971045, 0.7141733],
];
export function srgbToLab(rgb: ArrayLike<number>): [number, number, number] {
  const l = [0, 1, 2].map(i => (rgb[i] <= 0.04045 ? rgb[i] / 12.92 : ((rgb[i] + 0.055) / 1.055) ** 2.4));
  const xyz = N.map(r => 100 * (r[0] * l[0] + r[1] * l[1] + r[2] * l[2]));
  const out = new Float64Array(3);
  xyzToLab(xyz, out);
  return [out[0], out[1], out[2]];
}

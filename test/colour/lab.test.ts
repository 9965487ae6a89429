import assert from 'node:assert/strict';
import { D50, hue, labToLch, labToXyz, lchToLab, lightness, luminance, xyzToLab } from '../../src/colour/lab';

const near = (is: ArrayLike<number>, should: ArrayLike<number>, by: number) =>
  Array.from(should).forEach((value, i) => {
    assert.ok(Math.abs(is[i] - value) <= by, `${Array.from(is)} is not ${Array.from(should)}`);
  });

describe('CIELAB', () => {
  it('meets the characterisation data of ANSI/CGATS TR 006, which print XYZ and Lab side by side', () => {
    // paper, magenta 40 %, magenta 70 % of TR 006-2007; printed to two decimals
    const rows = [
      [84.47, 87.62, 74.52, 95, -0.02, -1.96],
      [57.26, 48.44, 44.59, 75.1, 27.61, -5.85],
      [42.67, 28.51, 26.69, 60.35, 51.93, -5.67],
    ];
    for (const row of rows) near(xyzToLab(row, new Float64Array(3)), row.slice(3), 0.03);
  });

  it('is 100, 0, 0 for the white of ICC.1 and 0, 0, 0 for black', () => {
    near(xyzToLab(D50, new Float64Array(3)), [100, 0, 0], 1e-12);
    near(xyzToLab([0, 0, 0], new Float64Array(3)), [0, 0, 0], 1e-12);
  });

  it('goes there and back, also in the straight part near black, in place', () => {
    for (const lab of [
      [95, 1.5, -6],
      [50, -60, 40],
      [5, 2, -3],
      [0.5, 0, 0],
    ]) {
      const v = Float64Array.from(lab);
      xyzToLab(labToXyz(v, v), v);
      near(v, lab, 1e-10);
    }
  });

  it('meets the lightness of L* 50: Y 18.4187 (CIE 015:2018, worked from its formula)', () => {
    near([luminance(50), lightness(18.4187), lightness(100), luminance(8)], [18.4187, 50, 100, 0.8856], 1e-4);
  });

  it('counts hue from +a* through +b*', () => {
    assert.deepEqual([hue(1, 0), hue(0, 1), hue(-1, 0), hue(0, -1)], [0, 90, 180, 270]);
    const v = Float64Array.of(40, -3, -4);
    near(labToLch(v, v), [40, 5, 233.1301], 1e-4);
    near(lchToLab(v, v), [40, -3, -4], 1e-12);
  });
});

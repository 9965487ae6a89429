import assert from 'node:assert/strict';
import { labToSrgb, SRGB_TO_XYZ, srgbToLab } from '../../src/colour/srgb';

describe('sRGB', () => {
  it('has the D50 primaries that the ICC publishes for sRGB (colorants of its v2 profiles, XYZ)', () => {
    // rXYZ, gXYZ, bXYZ of the usual sRGB profile (IEC 61966-2-1 through Bradford), three to four decimals
    const colorants = [
      [0.4361, 0.2225, 0.0139],
      [0.3851, 0.7169, 0.0971],
      [0.1431, 0.0606, 0.7141],
    ];
    colorants.forEach((column, j) => {
      column.forEach((value, i) => {
        assert.ok(
          Math.abs(SRGB_TO_XYZ[i * 3 + j] / 100 - value) < 2e-4,
          `${i},${j}: ${SRGB_TO_XYZ[i * 3 + j]}`,
        );
      });
    });
  });

  it('is exactly neutral where R = G = B', () => {
    const lab = new Float64Array(3);
    for (const v of [0, 0.02, 0.3, 0.5, 1]) {
      srgbToLab([v, v, v], lab);
      assert.ok(Math.hypot(lab[1], lab[2]) < 1e-9);
    }
    assert.ok(Math.abs(srgbToLab([128 / 255, 128 / 255, 128 / 255], lab)[0] - 53.585) < 0.001);
  });

  it('goes there and back in place, and clips what a screen cannot show', () => {
    const v = Float64Array.of(0.2, 0.6, 0.9);
    labToSrgb(srgbToLab(v, v), v);
    [0.2, 0.6, 0.9].forEach((value, i) => {
      assert.ok(Math.abs(v[i] - value) < 1e-7);
    });
    assert.deepEqual(Array.from(labToSrgb([55, -100, -50], new Float64Array(3)))[0], 0);
  });
});

import assert from 'node:assert/strict';
import { labToSrgb, srgbToLab } from '../../../src/colour/srgb';
import { toSrgb } from '../../../src/remedy/encode/gamut';

const rgb = new Float64Array(3);
const back = (L: number, a: number, b: number) => {
  toSrgb(L, a, b, rgb);
  return srgbToLab(rgb, new Float64Array(3));
};

describe('colour as sRGB', () => {
  it('is that colour where sRGB has it', () => {
    for (const lab of [
      [50, 10, -20],
      [80, -5, 40],
      [20, 3, 3],
    ]) {
      toSrgb(lab[0], lab[1], lab[2], rgb);
      labToSrgb(lab, new Float64Array(3)).forEach((wanted, c) => {
        assert.ok(Math.abs(rgb[c] - wanted) < 1e-6);
      });
    }
  });
  it('keeps its lightness and its hue where sRGB has not so much of it', () => {
    for (const [L, a, b] of [
      [98, 6, 10],
      [99.9, -8, 3],
      [3, 30, 20],
      [60, 120, 0],
    ]) {
      const seen = back(L, a, b);
      // as much as fits: a channel stands at its end
      assert.ok(Math.min(...rgb) < 0.01 || Math.max(...rgb) > 0.995, `${[L, a, b]} became ${rgb}`);
      assert.ok(Math.abs(seen[0] - L) < 0.05, `L* ${L} became ${seen[0]}`);
      assert.ok(Math.hypot(seen[1], seen[2]) < Math.hypot(a, b), `${[L, a, b]} became ${seen}`);
      assert.ok(Math.abs(seen[1] * b - seen[2] * a) < 0.02 * Math.hypot(a, b) * 10, `${seen}`);
    }
  });
  it('is white where the lightness is', () => {
    toSrgb(100, 5, 5, rgb);
    rgb.forEach(value => {
      assert.ok(value > 0.999, `${rgb}`);
    });
  });
});

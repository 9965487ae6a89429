import assert from 'node:assert/strict';
import { converter } from 'culori';
import { untagged } from '../../../src/picture/meaning/untagged';

const toLab = converter('lab');

/** culori's Lab with the ICC's rounded D50 differs in the fifth digit of the white only. */
function reference(r: number, g: number, b: number): number[] {
  const { l, a, b: blue } = toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });
  return [l, a, blue];
}

describe('RGB that adds up in light', () => {
  const { meaning } = untagged({ space: 'rgb' });
  it('agrees with culori on sRGB to 0.05', () => {
    const values = Float32Array.from({ length: 3000 }, (_, i) => (i * 7919 * 31 + (i % 3) * 104729) % 256);
    const lab = new Float32Array(values.length);
    meaning.lab(values, 1000, lab);
    for (let i = 0; i < 1000; i++)
      reference(values[i * 3], values[i * 3 + 1], values[i * 3 + 2]).forEach((wanted, c) => {
        const found = lab[i * 3 + c];
        assert.ok(
          Math.abs(found - wanted) < 0.05,
          `${values.subarray(i * 3, i * 3 + 3)}: ${found}, not ${wanted}`,
        );
      });
  });
  it('gives equal channels no colour at all, block means too', () => {
    const values = Float32Array.from({ length: 3 * 4081 }, (_, i) => Math.floor(i / 3) / 16);
    const lab = new Float32Array(values.length);
    meaning.lab(values, 4081, lab);
    for (let i = 0; i < 4081; i++) assert.ok(Math.hypot(lab[i * 3 + 1], lab[i * 3 + 2]) < 1e-4);
  });
});

import assert from 'node:assert/strict';
import { linearLightness, PER_L, type TonePlane } from '../../src/remedy/grey/plane';
import { differenceOf } from '../../src/remedy/proof';

const of = (tones: number[]): TonePlane => ({
  width: tones.length,
  height: 1,
  index: Uint16Array.from(tones, L => Math.round(L * PER_L)),
  lightness: linearLightness(),
  alpha: null,
  tint: null,
  colour: null,
});

describe('the difference of two pictures in lightness', () => {
  it('is the largest of any pixel, and the mean', () => {
    const { maxError, meanError } = differenceOf(of([10, 50, 90, 100]), of([10, 52, 89, 100]));
    assert.ok(Math.abs(maxError - 2) < 2e-3 && Math.abs(meanError - 0.75) < 2e-3, `${maxError} ${meanError}`);
  });
  it('goes by lightness, however it is kept', () => {
    const levels = {
      ...of([0, 0]),
      index: Uint8Array.of(0, 255),
      lightness: Float32Array.from({ length: 256 }, (_, i) => i / 2.55),
    };
    assert.ok(differenceOf(levels, of([0, 100])).maxError < 1e-3);
  });
});

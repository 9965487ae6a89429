import { lightness, luminance } from '../colour/lab';
import { measuredPress } from '../colour/press';
import { srgbCurve } from '../colour/tone-curves';
import type { Master } from './masters';

/** L* relative to the paper that equal parts of all three coloured inks still reach (24.8 in ANSI/CGATS TR 006). */
const DARKEST = 25;

/** L* of a tone of sRGB. */
export const lightnessOf = (tone: number): number => lightness(100 * srgbCurve.decode(tone));

/** The picture with its black lifted, all lightnesses in proportion, so that inks without black hold it too. */
export function lifted(master: Master): Master {
  const lift = (L: number) => DARKEST + (L * (100 - DARKEST)) / 100;
  const tones = master.tones.map(tone => srgbCurve.encode(luminance(lift(lightnessOf(tone))) / 100));
  return { ...master, tones };
}

/** Inks in percent for a depth 0-1; the deeper, the darker. */
export type Mix = (depth: number) => readonly [number, number, number, number];

const STEPS = 1000;

/**
 * The inks of a mix that are as light as a tone of sRGB, by what an untagged file of inks is read with (TR 006, relative
 * to its paper).
 * @returns inks in percent for a darkness 0-1 (1 - tone); what is darker than the mix reaches gets its full depth
 */
export function asLightAs(mix: Mix): Mix {
  const at = Float64Array.from({ length: STEPS + 1 }, (_, i) => relativeLightness(mix(i / STEPS)));
  return darkness => {
    const L = lightnessOf(1 - darkness);
    let [low, high] = [0, STEPS];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (at[middle] > L) low = middle;
      else high = middle;
    }
    const share = (at[low] - L) / (at[low] - at[high]);
    return mix((low + Math.min(1, Math.max(0, share))) / STEPS);
  };
}

function relativeLightness(percent: ArrayLike<number>): number {
  const press = measuredPress('TR006');
  const xyz = new Float64Array(3);
  press.xyz([0, 0, 0, 0], xyz);
  const paper = xyz[1];
  press.xyz(
    Array.from(percent, p => p / 100),
    xyz,
  );
  return lightness((100 * xyz[1]) / paper);
}

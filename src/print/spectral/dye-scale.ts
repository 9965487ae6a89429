import { lightness, luminance } from '../../colour/lab';
import { srgbCurve } from '../../colour/tone-curves';
import type { GreyAim } from '../aim';
import { amountsFor, type DyePrint } from './dye-print';

const LEVELS = 256;

/** Which amounts of dye a photographic printer lays down for each level of R, G and B: level * 3 + layer. */
export type DyeScale = Float64Array;

/**
 * Calibration of a photographic printer: at every level R = G = B prints exactly the grey aim under D50. The print's
 * luminance follows the file's (sRGB), stretched between the printer's black and the paper's white, which is what
 * conversion programs do (relative colorimetry with black-point compensation). Red rules the cyan layer alone, green
 * the magenta, blue the yellow: exact for greys, an approximation for colours (layers of a real paper disturb each
 * other).
 */
export function dyeScale(daylight: DyePrint, white: number, black: number, aim: GreyAim): DyeScale {
  const scale = new Float64Array(LEVELS * 3);
  const paper = luminance(white);
  const darkest = luminance(black);
  let amounts: Float64Array = new Float64Array(3);
  for (let level = LEVELS - 2; level >= 0; level--) {
    const L = lightness(darkest + srgbCurve.decode(level / (LEVELS - 1)) * (paper - darkest));
    amounts = greyOf(daylight, L, aim, amounts);
    scale.set(amounts, level * 3);
  }
  return scale;
}

/**
 * Dyes of a grey that meets the aim. Near black the flare can keep them from it, on a strongly coloured paper: then the
 * grey before, deepened as it is. `before`: the dyes of a lighter grey.
 */
export function greyOf(daylight: DyePrint, L: number, aim: GreyAim, before: Float64Array): Float64Array {
  try {
    return amountsFor(daylight, [L, aim.a(L), aim.b(L)], before);
  } catch {
    return deepened(daylight, before, L);
  }
}

/** The same mixture of dyes, as much of it as prints L; at most eight times. */
function deepened(daylight: DyePrint, amounts: Float64Array, L: number): Float64Array {
  const lab = new Float64Array(3);
  let [low, high] = [1, 8];
  for (let turn = 0; turn < 24; turn++) {
    const middle = (low + high) / 2;
    daylight.lab(
      amounts.map(value => value * middle),
      lab,
    );
    if (lab[0] > L) low = middle;
    else high = middle;
  }
  return amounts.map(value => value * high);
}

/** Amounts of dye for R, G, B in 0-1 (clamped), linear between levels. */
export function amountsOn(scale: DyeScale, rgb: ArrayLike<number>, out: Float64Array): Float64Array {
  for (let layer = 0; layer < 3; layer++) {
    const position = Math.min(1, Math.max(0, rgb[layer])) * (LEVELS - 1);
    const level = Math.min(LEVELS - 2, Math.floor(position));
    const t = position - level;
    out[layer] = (1 - t) * scale[level * 3 + layer] + t * scale[(level + 1) * 3 + layer];
  }
  return out;
}

import type { Meaning } from '../../picture/meaning/types';
import type { Samples } from '../../picture/types';
import { eachMix, LAB_UNITS } from './mixes';
import { linearLightness, STEPS, type TonePlane } from './plane';
import { alphaOf } from './single';
import { wholeNumbers } from './whole';

/** Colour of this many times the limit stays as it is; in between it fades in, so that no edge is made (own choice). */
const WHOLE = 1.5;

/**
 * A picture with its faint colour removed and its strong colour kept: nothing is left below the CIELAB chroma `below`.
 * Lightness stays everywhere.
 */
export function faintColourRemoved(decoded: Samples, meaning: Meaning, below: number): TonePlane {
  const samples = wholeNumbers(decoded);
  const { width, height } = samples;
  const pixels = width * height;
  const finish = (lab: Float32Array, n: number, out: Float32Array) => {
    for (let i = 0; i < n * 3; i += 3) {
      const kept = keptShare(Math.hypot(lab[i + 1], lab[i + 2]), below);
      out[i] = Math.round(Math.min(100, Math.max(0, lab[i])) * LAB_UNITS[0]);
      for (let c = 1; c < 3; c++)
        out[i + c] = Math.round(Math.min(127, Math.max(-128, lab[i + c] * kept)) * LAB_UNITS[c]);
    }
  };
  const lab = eachMix(samples, meaning, 3, finish, new Int16Array(pixels * 3));
  const index = new Uint16Array(pixels);
  const colour = new Int16Array(pixels * 2);
  for (let i = 0; i < pixels; i++) {
    index[i] = Math.round((lab[i * 3] / 32767) * (STEPS - 1));
    colour[i * 2] = lab[i * 3 + 1];
    colour[i * 2 + 1] = lab[i * 3 + 2];
  }
  return { width, height, index, lightness: linearLightness(), alpha: alphaOf(samples), tint: null, colour };
}

function keptShare(chroma: number, below: number): number {
  if (chroma >= below * WHOLE) return 1;
  if (chroma <= below) return 0;
  // rises from 0 at the limit to all of it
  const share = (chroma - below) / (below * (WHOLE - 1));
  return share * share * (3 - 2 * share);
}

// no-unit-test: index.test.ts holds it against the meaning, pixel by pixel
import { lightness } from '../../colour/lab';
import type { AdditiveRgb } from '../../picture/meaning/additive';
import type { Samples } from '../../picture/types';
import type { GreyMethod } from '../../shared/remedy';
import { channelShares } from './method';
import { PER_L } from './plane';
import { rampLightness } from './ramp';

/** Steps from black to white: L* to 0.004 in the deepest shadows, where it rises by 9 for 1 % of light. */
const FINE = 2 ** 18;

/**
 * What each channel adds to a sum, by level, and lightness by that sum, which weights below 0 can take below black, and
 * others then beyond white.
 */
interface Shares {
  red: Float32Array;
  green: Float32Array;
  blue: Float32Array;
  steps: Uint16Array;
}

/** Lightness (the linear table's steps) of colour whose channels add up: four tables and no arithmetic but sums. */
export function summedLightness(samples: Samples, meaning: AdditiveRgb, method: GreyMethod): Uint16Array {
  const data = samples.data as Uint8Array | Uint16Array;
  const levels = data instanceof Uint8Array ? 256 : 65536;
  const { share, sumIs } = channelShares(method, meaning);
  const [red, green, blue] = share.map(of =>
    Float32Array.from({ length: levels }, (_, i) => of(i / (levels - 1)) * FINE),
  );
  const scale =
    sumIs === 'stored'
      ? rampLightness(meaning, 'rgb', FINE + 1)
      : Float32Array.from({ length: FINE + 1 }, (_, i) => lightness((100 * i) / FINE));
  const steps = new Uint16Array(scale.length);
  for (let i = 0; i < steps.length; i++) steps[i] = Math.round(scale[i] * PER_L);
  const step = samples.alpha ? 4 : 3;
  const shares = { red, green, blue, steps };
  return data instanceof Uint8Array ? rememberedSums(data, step, shares) : plainSums(data, step, shares);
}

function plainSums(data: Uint16Array, step: number, { red, green, blue, steps }: Shares): Uint16Array {
  const out = new Uint16Array(data.length / step);
  for (let i = 0, at = 0; i < out.length; i++, at += step) {
    const sum = (red[data[at]] + green[data[at + 1]] + blue[data[at + 2]] + 0.5) | 0;
    out[i] = steps[Math.max(0, Math.min(sum, FINE))];
  }
  return out;
}

/**
 * The same of bytes, each colour summed once: which takes half the time, since a picture's colours are few. They are kept
 * by their differences from green, so that those of a picture that is nearly neutral lie close together.
 */
function rememberedSums(data: Uint8Array, step: number, { red, green, blue, steps }: Shares): Uint16Array {
  const out = new Uint16Array(data.length / step);
  const known = new Uint16Array(1 << 24);
  for (let i = 0, at = 0; i < out.length; i++, at += step) {
    const r = data[at];
    const g = data[at + 1];
    const b = data[at + 2];
    const colour = (((r - g) & 255) << 16) | (((b - g) & 255) << 8) | g;
    // 0 is not known yet, or black
    if (known[colour] === 0) {
      const sum = (red[r] + green[g] + blue[b] + 0.5) | 0;
      known[colour] = steps[Math.max(0, Math.min(sum, FINE))];
    }
    out[i] = known[colour];
  }
  return out;
}

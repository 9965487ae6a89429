// no-unit-test: index.test.ts holds it against the meaning, pixel by pixel
import { lightness } from '../../colour/lab';
import type { AdditiveRgb } from '../../picture/meaning/additive';
import type { Samples } from '../../picture/types';
import type { GreyMethod } from '../../shared/remedy';
import { weighedInKernel } from './kernel';
import { channelShares } from './method';
import { parts } from './parts';
import { PER_L } from './plane';
import { rampLightness } from './ramp';

/** Steps from black to white: L* to 0.004 in the deepest shadows, where it rises by 9 for 1 % of light. */
const FINE = 2 ** 18;

/** Lightness (the linear table's steps) of colour whose channels add up: four tables and no arithmetic but sums. */
export function summedLightness(samples: Samples, meaning: AdditiveRgb, method: GreyMethod): Uint16Array {
  const data = samples.data as Uint8Array | Uint16Array;
  const levels = data instanceof Uint8Array ? 256 : 65536;
  const { share, sumIs } = channelShares(method, meaning);
  const shares = share.map(of =>
    Float32Array.from({ length: levels }, (_, i) => of(i / (levels - 1)) * FINE),
  );
  const steps = stepsBySum(meaning, sumIs);
  const weighed = data instanceof Uint8Array && !samples.alpha ? weighedInKernel(data, shares, steps) : null;
  return weighed ?? sums(data, samples.alpha ? 4 : 3, shares, steps);
}

/** Weights below 0 can take a sum below black, and others then beyond white: these are the first step and the last. */
function stepsBySum(meaning: AdditiveRgb, sumIs: 'stored' | 'light'): Uint16Array {
  const steps = new Uint16Array(FINE + 1);
  const stored = sumIs === 'stored' ? rampLightness(meaning, 'rgb', FINE + 1) : null;
  for (let i = 0; i <= FINE; i++) steps[i] = Math.round((stored?.[i] ?? lightness((100 * i) / FINE)) * PER_L);
  return steps;
}

/** The same by plain arithmetic: of any depth, and with alpha. */
function sums(
  data: Uint8Array | Uint16Array,
  step: number,
  [red, green, blue]: readonly Float32Array[],
  steps: Uint16Array,
): Uint16Array {
  const out = new Uint16Array(data.length / step);
  for (const [from, to] of parts(out.length))
    for (let i = from, at = from * step; i < to; i++, at += step) {
      const sum = (red[data[at]] + green[data[at + 1]] + blue[data[at + 2]] + 0.5) | 0;
      out[i] = steps[Math.max(0, Math.min(sum, FINE))];
    }
  return out;
}

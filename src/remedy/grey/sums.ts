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
  const steps = Uint16Array.from(scale, L => Math.round(L * PER_L));
  const step = samples.alpha ? 4 : 3;
  const out = new Uint16Array(data.length / step);
  for (let i = 0, at = 0; i < out.length; i++, at += step) {
    // weights below 0 can go below black, and others then beyond white
    const sum = (red[data[at]] + green[data[at + 1]] + blue[data[at + 2]] + 0.5) | 0;
    out[i] = steps[Math.max(0, Math.min(sum, FINE))];
  }
  return out;
}

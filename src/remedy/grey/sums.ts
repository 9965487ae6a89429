// no-unit-test: index.test.ts holds it against the meaning, pixel by pixel
import { lightness } from '../../colour/lab';
import type { AdditiveRgb } from '../../picture/meaning/additive';
import type { Samples } from '../../picture/types';
import type { GreyMethod } from '../../shared/remedy';
import { standInFours, wordsOf } from './fours';
import { channelShares } from './method';
import { parts } from './parts';
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
  const shares = { red, green, blue, steps: stepsBySum(meaning, sumIs) };
  const step = samples.alpha ? 4 : 3;
  const out = new Uint16Array(data.length / step);
  const byFours = standInFours(data, step);
  for (const [from, to] of parts(out.length)) {
    const part = data.subarray(from * step, to * step);
    const into = out.subarray(from, to);
    if (byFours) sumFours(part, into, shares);
    sumSingly(part, step, into, byFours ? into.length & ~3 : 0, shares);
  }
  return out;
}

function stepsBySum(meaning: AdditiveRgb, sumIs: 'stored' | 'light'): Uint16Array {
  const steps = new Uint16Array(FINE + 1);
  const stored = sumIs === 'stored' ? rampLightness(meaning, 'rgb', FINE + 1) : null;
  for (let i = 0; i <= FINE; i++) steps[i] = Math.round((stored?.[i] ?? lightness((100 * i) / FINE)) * PER_L);
  return steps;
}

/** The step of a sum, which is rounded. */
const stepOf = (steps: Uint16Array, sum: number): number => {
  const fine = (sum + 0.5) | 0;
  return steps[Math.max(0, Math.min(fine, FINE))];
};

/** @param i the first pixel that is summed */
function sumSingly(
  data: Uint8Array | Uint16Array,
  step: number,
  out: Uint16Array,
  i: number,
  { red, green, blue, steps }: Shares,
): void {
  for (let at = i * step; i < out.length; i++, at += step)
    out[i] = stepOf(steps, red[data[at]] + green[data[at + 1]] + blue[data[at + 2]]);
}

/** The same of bytes, four pixels at a time, which takes half the time. Those left over are not summed. */
function sumFours(
  data: Uint8Array | Uint16Array,
  out: Uint16Array,
  { red, green, blue, steps }: Shares,
): void {
  const pixels = out.length & ~3;
  const words = wordsOf(data, pixels);
  const sum = (r: number, g: number, b: number) => stepOf(steps, red[r] + green[g] + blue[b]);
  for (let i = 0, at = 0; i < pixels; i += 4, at += 3) {
    const first = words[at];
    const middle = words[at + 1];
    const last = words[at + 2];
    out[i] = sum(first & 0xff, (first >>> 8) & 0xff, (first >>> 16) & 0xff);
    out[i + 1] = sum(first >>> 24, middle & 0xff, (middle >>> 8) & 0xff);
    out[i + 2] = sum((middle >>> 16) & 0xff, middle >>> 24, last & 0xff);
    out[i + 3] = sum((last >>> 8) & 0xff, (last >>> 16) & 0xff, last >>> 24);
  }
}

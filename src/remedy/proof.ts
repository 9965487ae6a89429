import { factsOf } from '../picture/facts';
import { plainEncoding } from '../picture/judge/encoding';
import type { Meaning } from '../picture/meaning/types';
import type { DecodedPage } from '../picture/read';
import type { Samples } from '../picture/types';
import type { Encoding } from '../shared/picture';
import { greyPlane } from './grey';
import type { TonePlane } from './grey/plane';
import { rampLightness } from './grey/ramp';
import { type Single, singleOf } from './grey/single';
import { pairsOf } from './pairs';

/** Differences of L*: the largest of any pixel, and the mean. */
export interface Difference {
  maxError: number;
  meanError: number;
}

/** What a picture that was read is found to be, and how far it is off what was intended. */
export function found(
  intended: TonePlane,
  { samples, header, reading }: DecodedPage,
): Difference & { encoding: Encoding } {
  const single = singleOf(samples);
  const encoding =
    // equal channels need no second look
    (single && plainEncoding(samples.space, header.bits, 0)) ?? factsOf(samples, header, reading).encoding;
  return { encoding, ...differenceOf(intended, samples, reading.meaning, single) };
}

/**
 * How far a picture that was read is off what was intended, in lightness, over every pixel.
 * @param single the one channel that says everything of it
 */
export function differenceOf(
  intended: TonePlane,
  read: Samples,
  meaning: Meaning,
  single: Single | null = singleOf(read),
): Difference {
  if (single && read.space !== 'lab') {
    const levels = single.data instanceof Uint8Array ? 256 : 65536;
    return compared(intended, single, rampLightness(meaning, read.space, levels));
  }
  const { index, lightness } = greyPlane(read, meaning, { kind: 'lightness' });
  return compared(intended, { data: index, first: 0, step: 1 }, lightness);
}

/** `ramp`: L* by level. */
function compared(plane: TonePlane, single: Single, ramp: Float32Array): Difference {
  const { index, lightness } = plane;
  const { data, first, step } = single;
  if (index instanceof Uint8Array && data instanceof Uint8Array && step === 1)
    return comparedPairs(pairsOf(index, data), lightness, ramp);
  let most = 0;
  let sum = 0;
  for (let i = 0, at = first; i < index.length; i++, at += step) {
    const difference = Math.abs(lightness[index[i]] - ramp[data[at]]);
    sum += difference;
    if (difference > most) most = difference;
  }
  return { maxError: most, meanError: sum / index.length };
}

/** `pairs`: how often level x 256 + level read comes; each is worked out once. */
function comparedPairs(pairs: Uint32Array, lightness: Float32Array, ramp: Float32Array): Difference {
  let most = 0;
  let sum = 0;
  let pixels = 0;
  pairs.forEach((count, pair) => {
    if (count === 0) return;
    const difference = Math.abs(lightness[pair >> 8] - ramp[pair & 255]);
    sum += difference * count;
    pixels += count;
    most = Math.max(most, difference);
  });
  return { maxError: most, meanError: sum / pixels };
}

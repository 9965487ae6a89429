import { factsOf } from '../picture/facts';
import { plainEncoding } from '../picture/judge/encoding';
import type { Meaning } from '../picture/meaning/types';
import type { DecodedPage } from '../picture/read';
import type { Samples } from '../picture/types';
import type { Encoding } from '../shared/picture';
import { greyPlane } from './grey';
import { comparedInKernel } from './grey/kernel';
import { parts } from './grey/parts';
import type { TonePlane } from './grey/plane';
import { rampLightness } from './grey/ramp';
import { type Single, singleOf } from './grey/single';
import { Pairs } from './pairs';

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
  const single = singleDifference(intended, samples, reading.meaning);
  const encoding =
    // equal channels need no second look
    (single && plainEncoding(samples.space, header.bits, 0)) ?? factsOf(samples, header, reading).encoding;
  return { encoding, ...(single ?? weighedDifference(intended, samples, reading.meaning)) };
}

/** How far a picture that was read is off what was intended, in lightness, over every pixel. */
export const differenceOf = (intended: TonePlane, read: Samples, meaning: Meaning): Difference =>
  singleDifference(intended, read, meaning) ?? weighedDifference(intended, read, meaning);

/** The same where one channel says everything of the picture; null where none does. */
function singleDifference(
  { index, lightness }: TonePlane,
  read: Samples,
  meaning: Meaning,
): Difference | null {
  const { data, channels, alpha, space } = read;
  if (space === 'lab' || data instanceof Float32Array) return null;
  const step = channels + (alpha ? 1 : 0);
  const ramp = rampLightness(meaning, space, data instanceof Uint8Array ? 256 : 65536);
  if (index instanceof Uint16Array && data instanceof Uint8Array && space !== 'cmyk' && !alpha) {
    const found = comparedInKernel(index, lightness, data, space === 'grey' ? 1 : 3, ramp);
    return found && { maxError: found.most, meanError: found.sum / index.length };
  }
  const compared = new Compared(lightness, ramp);
  for (const [from, to] of parts(index.length)) {
    const part = singleOf({ ...read, data: data.subarray(from * step, to * step) });
    if (!part) return null;
    compared.add(index.subarray(from, to), part);
  }
  return compared.difference();
}

/** The same of colour, by its lightness. */
function weighedDifference(intended: TonePlane, read: Samples, meaning: Meaning): Difference {
  const { index, lightness } = greyPlane(read, meaning, { kind: 'lightness' });
  const compared = new Compared(intended.lightness, lightness);
  for (const [from, to] of parts(index.length))
    compared.add(intended.index.subarray(from, to), { data: index.subarray(from, to), first: 0, step: 1 });
  return compared.difference();
}

/** Differences between pixels that were compared part by part. */
class Compared {
  private most = 0;
  private sum = 0;
  private pixels = 0;
  /** Of bytes on both sides. */
  private readonly pairs = new Pairs();

  /** L* by number of what was intended, and of what was read. */
  constructor(
    private readonly intended: Float32Array,
    private readonly read: Float32Array,
  ) {}

  add(index: TonePlane['index'], { data, first, step }: Single): void {
    this.pixels += index.length;
    if (index instanceof Uint8Array && data instanceof Uint8Array && step === 1) {
      this.pairs.add(index, data);
      return;
    }
    const { intended, read } = this;
    let { most, sum } = this;
    for (let i = 0, at = first; i < index.length; i++, at += step) {
      const difference = Math.abs(intended[index[i]] - read[data[at]]);
      sum += difference;
      if (difference > most) most = difference;
    }
    this.most = most;
    this.sum = sum;
  }

  difference(): Difference {
    let { most, sum } = this;
    // each pair is worked out once
    this.pairs.counts().forEach((count, pair) => {
      if (count === 0) return;
      const difference = Math.abs(this.intended[pair >> 8] - this.read[pair & 255]);
      sum += difference * count;
      most = Math.max(most, difference);
    });
    return { maxError: most, meanError: sum / this.pixels };
  }
}

// no-unit-test: index.test.ts and test/remedy/proof.test.ts hold it against plain arithmetic
import { loadKernel } from '../../picture/pass/kernel';
import { parts } from './parts';

/** Sums of shares must fit into as many bits, one of them the sign. */
const BITS = 32;

/**
 * Steps of L* of R, G and B in 8 bits, weighed by the kernel of the pass.
 * @param shares what each channel adds to a pixel's sum, by level
 * @param steps by sum, rounded; what lies below or beyond is the first or the last
 * @returns null where the shares are too large for the kernel
 */
export function weighedInKernel(
  data: Uint8Array,
  shares: readonly Float32Array[],
  steps: Uint16Array,
): Uint16Array | null {
  const largest = shares.reduce(
    (sum, share) => sum + share.reduce((most, v) => Math.max(most, Math.abs(v)), 0),
    1,
  );
  const shift = BITS - 2 - Math.ceil(Math.log2(largest));
  if (shift < 1) return null;
  const { memory, value, weigh } = loadKernel();
  const half = 2 ** (shift - 1);
  for (const [channel, share] of shares.entries()) {
    const fixed = new Int32Array(memory, value('SHARES') + channel * 1024, share.length);
    for (let level = 0; level < share.length; level++)
      fixed[level] = Math.round(share[level] * 2 ** shift) + (channel === 0 ? half : 0);
  }
  new Uint16Array(memory, value('STEPS'), value('LAST_SUM') + 1).set(steps);
  const tile = new Uint8Array(memory, value('TILE'));
  const out = new Uint16Array(data.length / 3);
  for (const [from, to] of parts(out.length)) {
    tile.set(data.subarray(from * 3, to * 3));
    weigh(to - from, shift);
    out.set(new Uint16Array(memory, value('NUMBERS'), to - from), from);
  }
  return out;
}

/**
 * Differences between `lightness[index[i]]` and `ramp` of the one number that bytes are of a pixel, each of `channels`.
 * @param lightness of 65536 numbers
 * @param ramp of 256
 * @returns the largest and the sum of all; null where channels differ
 */
export function comparedInKernel(
  index: Uint16Array,
  lightness: Float32Array,
  data: Uint8Array,
  channels: 1 | 3,
  ramp: Float32Array,
): { most: number; sum: number } | null {
  const kernel = loadKernel();
  const { memory, value } = kernel;
  new Float32Array(memory, value('LIGHTNESS'), lightness.length).set(lightness);
  new Float32Array(memory, value('RAMP'), ramp.length).set(ramp);
  const tile = new Uint8Array(memory, value('TILE'));
  kernel.beginComparison();
  for (const [from, to] of parts(index.length)) {
    tile.set(data.subarray(from * channels, to * channels));
    if (channels === 3 && !kernel.isEqual(to - from)) return null;
    new Uint16Array(memory, value('NUMBERS')).set(index.subarray(from, to));
    kernel.compare(to - from, channels);
  }
  return { most: kernel.mostDifference(), sum: kernel.sumOfDifferences() };
}

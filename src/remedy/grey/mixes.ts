import type { Meaning } from '../../picture/meaning/types';
import type { Samples } from '../../picture/types';

/** Pixels a turn: those whose mix is not known are worked out together. */
const TURN = 4096;
/** Mixes remembered, each in the one place that its numbers lead to. */
const KEPT_BITS = 16;
const KEPT = 1 << KEPT_BITS;

/** Units of a Lab raster's samples: L* x 327.67, a* and b* x 256. */
export const LAB_UNITS = [327.67, 256, 256] as const;

/**
 * What every pixel's mix of channels comes to by the picture's meaning; a mix that comes again soon is worked out once.
 * @param samples whole numbers
 * @param width numbers a pixel
 * @param finish from `n` rows of L*, a*, b* to `n` rows of `width` numbers
 * @param out `width` numbers a pixel, interleaved; filled and returned
 */
export function eachMix<Out extends Uint16Array | Int16Array>(
  samples: Samples,
  meaning: Meaning,
  width: 1 | 3,
  finish: (lab: Float32Array, n: number, out: Float32Array) => void,
  out: Out,
): Out {
  const { data, channels, alpha, space } = samples;
  const step = channels + (alpha ? 1 : 0);
  const pixels = data.length / step;
  const narrow = data instanceof Uint8Array;
  const scale = space === 'lab' ? LAB_UNITS.map(unit => 1 / unit) : Array(4).fill(narrow ? 1 : 1 / 257);
  const values = new Float32Array(TURN * channels);
  const lab = new Float32Array(TURN * 3);
  const found = new Float32Array(TURN * width);
  const asked = new Int32Array(TURN);

  function work(n: number): void {
    meaning.lab(values, n, lab);
    finish(lab, n, found);
  }

  // every place holds a mix from the start, that of zeros, so that none is empty
  work(1);
  const low = new Int32Array(KEPT);
  const high = new Int32Array(KEPT);
  const known = new Float32Array(KEPT * width);
  for (let place = 0; place < KEPT; place++)
    for (let w = 0; w < width; w++) known[place * width + w] = found[w];

  for (let start = 0; start < pixels; start += TURN) {
    const end = Math.min(pixels, start + TURN);
    let n = 0;
    for (let i = start, at = start * step; i < end; i++, at += step) {
      const one = (data[at] & 0xffff) | (data[at + 1] << 16);
      const other = channels === 4 ? data[at + 2] | (data[at + 3] << 16) : data[at + 2];
      const place = placeOf(one, other);
      if (low[place] === one && high[place] === other) {
        for (let w = 0; w < width; w++) out[i * width + w] = known[place * width + w];
        continue;
      }
      for (let c = 0; c < channels; c++) values[n * channels + c] = data[at + c] * scale[c];
      asked[n++] = i;
    }
    if (n === 0) continue;
    work(n);
    for (let m = 0; m < n; m++) {
      const i = asked[m];
      const at = i * step;
      const one = (data[at] & 0xffff) | (data[at + 1] << 16);
      const other = channels === 4 ? data[at + 2] | (data[at + 3] << 16) : data[at + 2];
      const place = placeOf(one, other);
      low[place] = one;
      high[place] = other;
      for (let w = 0; w < width; w++) out[i * width + w] = known[place * width + w] = found[m * width + w];
    }
  }
  return out;
}

/** Spreads mixes over the places, neighbours far apart (multiplicative hashing, Knuth, TAOCP 3, 6.4). */
function placeOf(one: number, other: number): number {
  return (Math.imul(one, 0x9e3779b1) ^ Math.imul(other, 0x85ebca77)) >>> (32 - KEPT_BITS);
}

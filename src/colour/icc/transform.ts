import type { Lcms } from 'lcms-wasm';
import type { Space } from '../../shared/picture';
import { IccError } from './littlecms';

/** Rendering intents by their ICC numbers. */
export const INTENTS = { perceptual: 0, relative: 1, saturation: 2, absolute: 3 } as const;
export type Intent = keyof typeof INTENTS;

/** LittleCMS' own numbers: channels, its name for the colour space, and its unit for a full channel. */
const FORMATS: Record<Space, { channels: number; space: number; full: number }> = {
  grey: { channels: 1, space: 3, full: 1 },
  rgb: { channels: 3, space: 4, full: 1 },
  cmyk: { channels: 4, space: 6, full: 100 },
  lab: { channels: 3, space: 10, full: 1 },
};

export const channelsOf = (space: Space): number => FORMATS[space].channels;

/** Only 32-bit floats are exact: the library's 8 and 16-bit ways are off by up to 1.1 dE, its doubles are garbage. */
export function floatFormat(space: Space): number {
  const { channels, space: type } = FORMATS[space];
  return (1 << 22) | (type << 16) | (channels << 3) | 4;
}

/** No colour of a sound profile comes near: what is beyond it, or no number at all, is damage. */
const BEYOND = 1000;
const IMPOSSIBLE = 'the ICC profile is damaged: it gives colours that cannot be';

/** Colours a turn, so that the library's memory stays small. */
const TURN = 16384;

/**
 * Sends `values` (n x channels; inks, grey and RGB 0-1, Lab as it is) through a transform.
 * @throws IccError where the count does not fit, or the profile gives colours that cannot be
 */
export function runTransform(
  lcms: Lcms,
  transform: number,
  from: Space,
  to: Space,
  values: ArrayLike<number>,
): Float64Array {
  const input = FORMATS[from];
  const output = FORMATS[to];
  const count = values.length / input.channels;
  if (!Number.isInteger(count))
    throw new IccError(`${values.length} values are no whole number of ${input.channels}-channel colours`);
  const out = new Float64Array(count * output.channels);
  const turn = Math.min(TURN, count);
  const source = lcms._malloc(turn * input.channels * 4);
  const target = lcms._malloc(turn * output.channels * 4);
  for (let start = 0; start < count; start += turn) {
    const n = Math.min(turn, count - start);
    const written = floats(lcms, source, n * input.channels);
    const from = start * input.channels;
    for (let i = 0; i < written.length; i++) written[i] = values[from + i] * input.full;
    lcms._cmsDoTransform(transform, source, target, n);
    const read = floats(lcms, target, n * output.channels);
    const to = start * output.channels;
    for (let i = 0; i < read.length; i++) out[to + i] = read[i] / output.full;
  }
  lcms._free(source);
  lcms._free(target);
  if (!out.every(value => Math.abs(value) < BEYOND)) throw new IccError(IMPOSSIBLE);
  return out;
}

/** The way to Lab for one colour at a time, through buffers in the library's memory that are never given back. */
export function singleTransform(
  lcms: Lcms,
  transform: number,
  from: Space,
): (values: ArrayLike<number>, out: Float64Array) => void {
  const { channels, full } = FORMATS[from];
  const source = lcms._malloc(channels * 4);
  const target = lcms._malloc(3 * 4);
  let input = floats(lcms, source, channels);
  let output = floats(lcms, target, 3);
  return (values, out) => {
    // the library's memory moves when it grows, and views on it go empty
    if (input.length === 0) input = floats(lcms, source, channels);
    for (let i = 0; i < channels; i++) input[i] = values[i] * full;
    lcms._cmsDoTransform(transform, source, target, 1);
    if (output.length === 0) output = floats(lcms, target, 3);
    for (let i = 0; i < 3; i++) {
      out[i] = output[i];
      if (!(Math.abs(out[i]) < BEYOND)) throw new IccError(IMPOSSIBLE);
    }
  };
}

/** A view on the library's memory: taken anew after every call, since that memory moves when it grows. */
const floats = (lcms: Lcms, pointer: number, length: number) =>
  new Float32Array(lcms.HEAPU8.buffer, pointer, length);

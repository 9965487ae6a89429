import type { Samples } from './types';

/** Whole numbers or floats straight from the decoder. */
export type Channels = Samples['data'];

/** Keeps the first `kept` channels and, where `alphaAt` is given, that one behind them. In place, no second buffer. */
export function keepChannels<T extends Channels>(data: T, stored: number, kept: number, alphaAt = -1): T {
  const alpha = alphaAt >= 0;
  const step = kept + (alpha ? 1 : 0);
  if (stored === step && (!alpha || alphaAt === kept)) return data;
  const pixels = data.length / stored;
  for (let i = 0, from = 0, to = 0; i < pixels; i++, from += stored, to += step) {
    for (let c = 0; c < kept; c++) data[to + c] = data[from + c];
    if (alpha) data[to + kept] = data[from + alphaAt];
  }
  return data.subarray(0, pixels * step) as T;
}

/** Turns the colour channels round (white is zero, ink marker absent) and leaves alpha alone. In place. */
export function invert(data: Channels, step: number, colours: number, full: number): void {
  if (step === colours) for (let i = 0; i < data.length; i++) data[i] = full - data[i];
  else
    for (let i = 0; i < data.length; i += step)
      for (let c = 0; c < colours; c++) data[i + c] = full - data[i + c];
}

/** Colours out of premultiplied ones, to the nearest whole number (the decoder cuts); alpha is last. In place. */
export function unpremultiply(data: Uint8Array | Uint16Array, step: number): void {
  const full = data instanceof Uint8Array ? 255 : 65535;
  for (let i = 0; i < data.length; i += step) {
    const alpha = data[i + step - 1];
    if (alpha === full) continue;
    for (let c = 0; c < step - 1; c++)
      data[i + c] = alpha === 0 ? 0 : Math.min(full, Math.round((data[i + c] * full) / alpha));
  }
}

/** The decoder shifts 10 and 12 bits up to 16, which leaves white short of full: spread them over the whole range. */
export function spread(data: Uint16Array, bits: number): void {
  const most = (1 << bits) - 1;
  const table = Uint16Array.from({ length: most + 1 }, (_, i) => Math.round((i * 65535) / most));
  for (let i = 0; i < data.length; i++) data[i] = table[data[i] >>> (16 - bits)];
}

/**
 * Indices to colours.
 * @param indices spread over 0-255 as the decoder leaves them
 * @param map TIFF's colour map: all reds, all greens, all blues, 16 bits each (8 by some old writers); 8-bit colours stand
 *   there as value x 257, by some writers x 256
 */
export function applyPalette(indices: Uint8Array, bits: number, map: number[]): Uint8Array {
  const colours = 1 << bits;
  const factor = map.every(v => v < 256) ? 1 : map.every(v => v % 256 === 0) ? 256 : 257;
  const entry = (i: number) => Math.round((map[i] ?? 0) / factor);
  const shift = 8 - bits;
  const [r, g, b] = [0, 1, 2].map(c =>
    Uint8Array.from({ length: colours }, (_, i) => entry(c * colours + i)),
  );
  const out = new Uint8Array(indices.length * 3);
  for (let i = 0, to = 0; i < indices.length; i++, to += 3) {
    const index = indices[i] >>> shift;
    out[to] = r[index];
    out[to + 1] = g[index];
    out[to + 2] = b[index];
  }
  return out;
}

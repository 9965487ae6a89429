import type { Samples } from '../../picture/types';

type Numbers = Uint8Array | Uint16Array;

/** The one channel that says everything of a picture: it stands at `first` and then every `step` samples. */
export interface Single {
  data: Numbers;
  first: number;
  step: number;
}

/**
 * That channel of grey, of RGB with R = G = B throughout, of black ink alone; null where there is none.
 * @param samples whole numbers
 */
export function singleOf({ data, channels, alpha, space }: Samples): Single | null {
  if (data instanceof Float32Array || data instanceof Int16Array) return null;
  const step = channels + (alpha ? 1 : 0);
  if (space === 'grey') return { data, first: 0, step };
  if (space === 'rgb') {
    const equal = equalChannel(data, step);
    return equal && { data: equal, first: 0, step: 1 };
  }
  return isBlackAlone(data, step) ? { data, first: 3, step } : null;
}

/** A channel by itself: the samples themselves where nothing lies between, else a copy. */
export function apart({ data, first, step }: Single): Numbers {
  if (step === 1) return data;
  const out = room(data, step);
  for (let i = 0, from = first; i < out.length; i++, from += step) out[i] = data[from];
  return out;
}

/** Alpha of every pixel, full = the most that the array holds; null where there is none, or all are opaque. */
export function alphaOf({ data, channels, alpha }: Samples): Numbers | null {
  if (!alpha) return null;
  const step = channels + 1;
  const own =
    data instanceof Int16Array ? labAlpha(data) : apart({ data: data as Numbers, first: channels, step });
  const full = own instanceof Uint8Array ? 255 : 65535;
  return own.every(value => value === full) ? null : own;
}

/** Lab's alpha runs to 32767. */
function labAlpha(data: Int16Array): Uint16Array {
  const whole = (value: number) => Math.round((Math.max(0, value) / 32767) * 65535);
  return Uint16Array.from({ length: data.length / 4 }, (_, i) => whole(data[i * 4 + 3]));
}

/** What R, G and B are alike, by itself; null where they are not. Looked at and taken in one walk. */
function equalChannel(data: Numbers, step: number): Numbers | null {
  const out = room(data, step);
  let i = 0;
  if (out instanceof Uint8Array && step === 3 && LITTLE && data.byteOffset % 4 === 0) {
    if (!equalFours(data, out)) return null;
    i = out.length & ~3;
  }
  for (let at = i * step; i < out.length; i++, at += step) {
    const green = data[at + 1];
    if (data[at] !== green || data[at + 2] !== green) return null;
    out[i] = green;
  }
  return out;
}

/** The machine's own order of bytes. */
const LITTLE = new Uint8Array(Uint16Array.of(1).buffer)[0] === 1;

/** The same of bytes, four pixels at a time, which takes half the time: RGBR GBRG BRGB. Those left over are not looked at. */
function equalFours(data: Numbers, out: Uint8Array): boolean {
  const taken = new Uint32Array(out.buffer, 0, out.length >> 2);
  const words = new Uint32Array(data.buffer, data.byteOffset, taken.length * 3);
  for (let i = 0, at = 0; i < taken.length; i++, at += 3) {
    const first = words[at];
    const middle = words[at + 1];
    const last = words[at + 2];
    const a = first & 0xff;
    const b = first >>> 24;
    const c = middle >>> 24;
    const d = last >>> 24;
    const apart =
      (first ^ (a | (a << 8) | (a << 16) | (b << 24))) |
      (middle ^ (b | (b << 8) | (c << 16) | (c << 24))) |
      (last ^ (c | (d << 8) | (d << 16) | (d << 24)));
    if (apart !== 0) return false;
    taken[i] = a | (b << 8) | (c << 16) | (d << 24);
  }
  return true;
}

/** One number a pixel. */
const room = (data: Numbers, step: number): Numbers =>
  data instanceof Uint8Array ? new Uint8Array(data.length / step) : new Uint16Array(data.length / step);

function isBlackAlone(data: Numbers, step: number): boolean {
  for (let at = 0; at < data.length; at += step)
    if ((data[at] | data[at + 1] | data[at + 2]) !== 0) return false;
  return true;
}

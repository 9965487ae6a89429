import type { Samples } from '../../picture/types';

type Channel = Uint8Array | Uint16Array;

/**
 * The one channel that says everything: of grey, of RGB with R = G = B throughout, of black ink alone. Null where there
 * is none. Without anything else beside it the stored samples themselves, not a copy.
 */
export function singleChannel({ data, channels, alpha, space }: Samples): Channel | null {
  if (data instanceof Float32Array || data instanceof Int16Array) return null;
  if (space === 'grey') return alpha ? channelOf(data, 2, 0) : data;
  const step = channels + (alpha ? 1 : 0);
  return space === 'rgb' ? equalChannels(data, step) : blackAlone(data, step);
}

/** Alpha of every pixel, full = the most that the array holds; null where there is none, or all are opaque. */
export function alphaOf({ data, channels, alpha }: Samples): Channel | null {
  if (!alpha) return null;
  const step = channels + 1;
  // Lab's runs to 32767
  const own =
    data instanceof Int16Array
      ? Uint16Array.from({ length: data.length / step }, (_, i) =>
          Math.round((Math.max(0, data[i * step + channels]) / 32767) * 65535),
        )
      : channelOf(data as Channel, step, channels);
  const full = own instanceof Uint8Array ? 255 : 65535;
  return own.every(value => value === full) ? null : own;
}

function channelOf(data: Channel, step: number, channel: number): Channel {
  const out = room(data, step);
  for (let i = 0, from = channel; i < out.length; i++, from += step) out[i] = data[from];
  return out;
}

function equalChannels(data: Channel, step: number): Channel | null {
  const out = room(data, step);
  for (let i = 0, from = 0; i < out.length; i++, from += step) {
    const green = data[from + 1];
    if (data[from] !== green || data[from + 2] !== green) return null;
    out[i] = green;
  }
  return out;
}

function blackAlone(data: Channel, step: number): Channel | null {
  const out = room(data, step);
  for (let i = 0, from = 0; i < out.length; i++, from += step) {
    if ((data[from] | data[from + 1] | data[from + 2]) !== 0) return null;
    out[i] = data[from + 3];
  }
  return out;
}

const room = (data: Channel, step: number): Channel =>
  data instanceof Uint8Array ? new Uint8Array(data.length / step) : new Uint16Array(data.length / step);

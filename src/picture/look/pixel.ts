import type { PixelReading } from '../../shared/look';
import type { Space } from '../../shared/picture';
import { LAB_UNITS } from '../pass/lab';
import type { OpenPage } from './kept';
import { seenSize, storedPoint } from './upright';
import { Values } from './values';

const NAMES: Record<Space, string[]> = {
  grey: ['Grey'],
  rgb: ['R', 'G', 'B'],
  cmyk: ['C', 'M', 'Y', 'K'],
  lab: ['L*', 'a*', 'b*'],
};

/** A pixel by its place in the picture as it is seen; what lies outside is the nearest that does not. */
export function readPixel(
  { header, samples, meaning }: OpenPage,
  seenX: number,
  seenY: number,
): PixelReading {
  const { width, height, channels, space, data } = samples;
  const stored = { width, height, orientation: header.orientation };
  const size = seenSize(stored);
  const x = Math.min(size.width - 1, Math.max(0, Math.floor(seenX)));
  const y = Math.min(size.height - 1, Math.max(0, Math.floor(seenY)));
  const [column, row] = storedPoint(x, y, stored);
  const i = row * width + column;
  const values = new Values(samples);
  const native = 2 ** header.bits - 1;
  const whole = !(data instanceof Float32Array) && space !== 'lab';
  const full = data instanceof Uint8Array ? 255 : 65535;
  const value = (c: number) => {
    const sample = data[i * values.step + c];
    if (space === 'lab') return sample / LAB_UNITS[c];
    return whole ? Math.round((sample * native) / full) : sample;
  };
  const opacity = values.opacity(i);
  return {
    x,
    y,
    channels: NAMES[space].slice(0, channels).map((name, c) => ({ name, value: value(c) })),
    full: whole ? native : null,
    alpha: samples.alpha ? opacity : null,
    lab: opacity > 0 ? labOf() : null,
  };

  function labOf() {
    const one = new Float32Array(channels);
    const lab = new Float32Array(3);
    values.read(i, 1, one);
    meaning.lab(one, 1, lab);
    const [L, a, b] = lab;
    return { L, a, b, chroma: Math.hypot(a, b) };
  }
}

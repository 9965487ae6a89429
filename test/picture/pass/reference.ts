// no-unit-test: the naive counting that the kernel is compared with
import type { Samples } from '../../../src/picture/types';

/** One pixel that counts: where it is, what is stored, and what is seen on paper, both in 0-1. */
interface Pixel {
  x: number;
  y: number;
  stored: number[];
  seen: number[];
}

export const fullOf = (data: Samples['data']) =>
  data instanceof Uint8Array ? 255 : data instanceof Uint16Array ? 65535 : 1;

/** Every pixel that is not fully transparent, composited on paper in plain arithmetic. */
export function* pixelsOf({ width, height, channels, alpha, space, data }: Samples): Generator<Pixel> {
  const full = fullOf(data);
  const paper = space === 'cmyk' ? 0 : 1;
  const step = channels + (alpha ? 1 : 0);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const at = (y * width + x) * step;
      const stored = [...data.subarray(at, at + channels)].map(v => v / full);
      const opacity = alpha ? data[at + channels] / full : 1;
      if (opacity > 0) yield { x, y, stored, seen: stored.map(v => v * opacity + paper * (1 - opacity)) };
    }
}

/** Levels, spread (steps of 1/255), ink total (percent) and block means (0-255), each by its definition. */
export function count(samples: Samples) {
  const pixels = [...pixelsOf(samples)];
  const full = fullOf(samples.data);
  const levels = Array.from({ length: samples.channels }, (_, c) => {
    if (pixels.length === 0) return { min: 0, max: 0, mean: 0 };
    const values = pixels.map(p => p.stored[c] * full);
    return {
      min: values.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY),
      max: values.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY),
      mean: values.reduce((a, b) => a + b, 0) / values.length,
    };
  });
  const columns = Math.ceil(samples.width / 8);
  const blocks = new Map<number, Pixel[]>();
  for (const p of pixels) {
    const block = Math.floor(p.y / 8) * columns + Math.floor(p.x / 8);
    blocks.set(block, [...(blocks.get(block) ?? []), p]);
  }
  const means = new Map(
    [...blocks].map(([block, inside]) => [
      block,
      inside[0].seen.map((_, c) => (inside.reduce((sum, p) => sum + p.seen[c], 0) / inside.length) * 255),
    ]),
  );
  return {
    pixels,
    levels,
    means,
    spread: pixels.reduce((most, p) => Math.max(most, Math.max(...p.seen) - Math.min(...p.seen)), 0) * 255,
    inkTotal:
      pixels.reduce(
        (most, p) =>
          Math.max(
            most,
            p.seen.reduce((a, b) => a + b, 0),
          ),
        0,
      ) * 100,
  };
}

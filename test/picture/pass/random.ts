// no-unit-test: seeded numbers and pictures for the tests beside it
import type { Samples } from '../../../src/picture/types';

/** Mulberry32: a small seeded generator, 0 <= x < 1. */
export function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

export type Depth = 8 | 16 | 'float';
/** How the channels go together: all their own, all equal, nearly equal. */
export type Content = 'noise' | 'equal' | 'near';
export type Opacity = 'none' | 'opaque' | 'holes' | 'soft';

/** A picture of random samples. */
export function picture(
  seed: number,
  width: number,
  height: number,
  space: 'grey' | 'rgb' | 'cmyk',
  depth: Depth,
  content: Content,
  opacity: Opacity,
): Samples {
  const next = random(seed);
  const channels = { grey: 1, rgb: 3, cmyk: 4 }[space] as 1 | 3 | 4;
  const alpha = opacity !== 'none';
  const step = channels + (alpha ? 1 : 0);
  const full = depth === 8 ? 255 : depth === 16 ? 65535 : 1;
  const data = new (depth === 8 ? Uint8Array : depth === 16 ? Uint16Array : Float32Array)(
    width * height * step,
  );
  const store = (v: number) => (depth === 'float' ? v : Math.round(v * full));
  for (let at = 0; at < data.length; at += step) {
    const base = next();
    for (let c = 0; c < channels; c++) {
      const own = content === 'noise' ? next() : content === 'near' ? base + (next() - 0.5) * 0.06 : base;
      data[at + c] = store(Math.min(1, Math.max(0, own)));
    }
    if (opacity === 'opaque') data[at + channels] = full;
    if (opacity === 'holes') data[at + channels] = next() < 0.3 ? 0 : full;
    if (opacity === 'soft') data[at + channels] = next() < 0.2 ? 0 : store(0.01 + 0.99 * next());
  }
  return { width, height, channels, alpha, space, data };
}

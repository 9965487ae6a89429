import type { Samples } from '../../picture/types';

/** A picture made small by the mean of what falls into each pixel, in the stored numbers. One that is small stays. */
export function shrunk(samples: Samples, longEdge: number): Samples {
  const { width, height, channels, alpha, data } = samples;
  const scale = longEdge / Math.max(width, height);
  if (scale >= 1) return samples;
  const [w, h] = [width, height].map(edge => Math.max(1, Math.round(edge * scale)));
  const step = channels + (alpha ? 1 : 0);
  const out = new (data.constructor as Uint8ArrayConstructor)(w * h * step) as Samples['data'];
  const whole = !(data instanceof Float32Array);
  const sums = new Float64Array(step);
  const from = (i: number, n: number, all: number) => Math.floor((i * all) / n);
  for (let y = 0, to = 0; y < h; y++) {
    const [top, bottom] = [from(y, h, height), from(y + 1, h, height)];
    for (let x = 0; x < w; x++, to += step) {
      const [left, right] = [from(x, w, width), from(x + 1, w, width)];
      sums.fill(0);
      for (let row = top; row < bottom; row++)
        for (let at = (row * width + left) * step; at < (row * width + right) * step; at += step)
          for (let c = 0; c < step; c++) sums[c] += data[at + c];
      const pixels = (bottom - top) * (right - left);
      for (let c = 0; c < step; c++) out[to + c] = whole ? Math.round(sums[c] / pixels) : sums[c] / pixels;
    }
  }
  return { ...samples, width: w, height: h, data: out };
}

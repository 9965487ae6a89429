import type { Samples } from '../../picture/types';

/**
 * A picture with alpha laid on white paper (inks: on bare paper), in the stored numbers, as it is judged. Pixels that
 * are wholly transparent become paper. A picture without alpha is returned as it is.
 */
export function onPaper(samples: Samples): Samples {
  if (!samples.alpha) return samples;
  const { data, channels, space } = samples;
  const step = channels + 1;
  const pixels = data.length / step;
  const full =
    data instanceof Uint8Array
      ? 255
      : data instanceof Uint16Array
        ? 65535
        : data instanceof Int16Array
          ? 32767
          : 1;
  const paper = Array.from({ length: channels }, (_, c) =>
    space === 'cmyk' || (space === 'lab' && c > 0) ? 0 : full,
  );
  const whole = !(data instanceof Float32Array);
  const out = new (data.constructor as Uint8ArrayConstructor)(pixels * channels) as Samples['data'];
  for (let i = 0, from = 0, to = 0; i < pixels; i++, from += step, to += channels) {
    const alpha = Math.min(1, Math.max(0, data[from + channels] / full));
    for (let c = 0; c < channels; c++) {
      const seen = data[from + c] * alpha + paper[c] * (1 - alpha);
      out[to + c] = whole ? Math.round(seen) : seen;
    }
  }
  return { ...samples, alpha: false, data: out };
}

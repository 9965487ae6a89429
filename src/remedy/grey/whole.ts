// no-unit-test: index.test.ts converts floats through it
import type { Samples } from '../../picture/types';

/** Whole numbers, as everything but floating point is stored already: floats 0-1 become 16 bits, beyond is clamped. */
export function wholeNumbers(samples: Samples): Samples {
  const { data } = samples;
  if (!(data instanceof Float32Array)) return samples;
  // not-a-number is black, as it is judged
  return {
    ...samples,
    data: Uint16Array.from(data, v => Math.round(Math.min(1, Math.max(0, v || 0)) * 65535)),
  };
}

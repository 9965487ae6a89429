// no-unit-test: part of the tests
import type { Stored } from '../../../src/remedy/encode/stored';
import type { Carried } from '../../../src/remedy/metadata/carried';

const CHANNELS = { grey: 1, rgb: 3, cmyk: 4 } as const;

/** A picture in which every value differs from its neighbours; inks hold black alone. */
export function stored(
  space: Stored['space'],
  { bits = 8, alpha = false, width = 67, height = 45 }: Partial<Stored> = {},
): Stored {
  const channels = CHANNELS[space] + (alpha ? 1 : 0);
  const length = width * height * channels;
  const data = bits === 8 ? new Uint8Array(length) : new Uint16Array(length);
  for (let i = 0; i < length; i++) {
    const black = i % channels === 3;
    data[i] = space === 'cmyk' && !black ? 0 : i * (bits === 8 ? 7 : 2531) + (i >> 5);
  }
  return { width, height, space, bits, data, alpha, icc: null };
}

export const bare = (more: Partial<Carried> = {}): Carried => ({
  density: null,
  orientation: 1,
  exif: null,
  iptc: null,
  resources: [],
  xmp: null,
  texts: [],
  told: [],
  ...more,
});

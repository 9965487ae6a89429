// no-unit-test: index.test.ts and the outside checks read them
import { plainProfile } from '../../colour/icc/write';
import { SRGB_TO_XYZ } from '../../colour/srgb';
import { srgbCurve } from '../../colour/tone-curves';

let srgb: Uint8Array | null = null;
let grey: Uint8Array | null = null;

/** A profile of sRGB (IEC 61966-2-1) of our own making. */
export function srgbProfile(): Uint8Array {
  srgb ??= plainProfile({ description: 'sRGB', decode: srgbCurve.decode, primaries: SRGB_TO_XYZ });
  return srgb;
}

export const greyDescription = 'Grey, tone curve of sRGB';

/** One channel that keeps the numbers of sRGB's greys. */
export function greyProfile(): Uint8Array {
  grey ??= plainProfile({
    description: greyDescription,
    decode: srgbCurve.decode,
    primaries: null,
  });
  return grey;
}

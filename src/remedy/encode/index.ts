import { lightness } from '../../colour/lab';
import { srgbCurve } from '../../colour/tone-curves';
import { readingOf } from '../../picture/meaning';
import { blackLightness } from '../../picture/meaning/press';
import type { RemedyWish } from '../../shared/remedy';
import type { TonePlane } from '../grey/plane';
import { rampLightness } from '../grey/ramp';
import { RemedyError } from '../remedy-error';
import { nearestLevels } from './levels';
import { colouredNumbers, inkNumbers, singleNumbers, tintedNumbers } from './numbers';
import { greyProfile, srgbProfile } from './profiles';
import type { Stored } from './stored';

/**
 * A picture's lightness as the stored numbers of an encoding, each to the nearest that there is; nothing is dithered.
 * Equal numbers come out of equal ones.
 * @param sourceBits depth of the source: more than 8 become 16 where the wish does not say, and so do 8 where they are
 *   too few for the grey profile
 * @throws RemedyError where the grey profile of the wish cannot be used
 */
export async function encode(plane: TonePlane, wish: RemedyWish, sourceBits: number): Promise<Stored> {
  const bits = wish.bits ?? (sourceBits > 8 || (await isCoarse(wish.greyProfile)) ? 16 : 8);
  const { width, height } = plane;
  const size = { width, height, bits } as const;
  switch (wish.to) {
    case 'single-channel': {
      const icc = wish.greyProfile ?? greyProfile();
      const scale = wish.greyProfile ? await levelsOf(icc, bits) : srgbGreys(bits);
      const grey = { ...size, space: 'grey' as const, alpha: plane.alpha !== null, icc };
      return withNumbers(grey, () => singleNumbers(plane, nearestLevels(plane.lightness, scale), bits, 1));
    }
    case 'black-only': {
      const table = nearestLevels(plane.lightness, blacks(bits));
      return { ...size, space: 'cmyk', data: inkNumbers(plane, table, bits), alpha: false, icc: null };
    }
    default: {
      const greys = srgbGreys(bits);
      const rgb = { ...size, space: 'rgb' as const, alpha: plane.alpha !== null, icc: srgbProfile() };
      if (plane.colour)
        return { ...rgb, data: colouredNumbers(plane, nearestLevels(plane.lightness, greys), bits) };
      if (plane.tint) return { ...rgb, data: tintedNumbers(plane, bits) };
      return withNumbers(rgb, () => singleNumbers(plane, nearestLevels(plane.lightness, greys), bits, 3));
    }
  }
}

/** The numbers are made when they are asked for first: a file whose coded luminance stays needs none. */
function withNumbers(stored: Omit<Stored, 'data'>, make: () => Stored['data']): Stored {
  let made: Stored['data'] | null = null;
  return {
    ...stored,
    get data() {
      return (made ??= make());
    },
  };
}

const scaleOf = (bits: 8 | 16, lightnessOf: (value: number) => number) =>
  Float32Array.from({ length: 2 ** bits }, (_, i) => lightnessOf(i / (2 ** bits - 1)));

/** A scale by depth, made on first use, then kept. */
function kept(lightnessOf: (value: number) => number): (bits: 8 | 16) => Float32Array {
  const known: Partial<Record<8 | 16, Float32Array>> = {};
  return bits => (known[bits] ??= scaleOf(bits, lightnessOf));
}

/** L* of the greys of sRGB, by level. */
const srgbGreys = kept(value => lightness(100 * srgbCurve.decode(value)));

/**
 * Whether 256 levels of these L* are stored as they are among the greys of a grey profile; null: among those of sRGB.
 * @throws RemedyError where it is no grey profile, or damaged
 */
export async function keepsLevels(lightness: Float32Array, icc: Uint8Array | null): Promise<boolean> {
  const scale = icc ? await levelsOf(icc, 8) : srgbGreys(8);
  return nearestLevels(lightness, scale).every((nearest, level) => nearest === level);
}

/** L* of black ink alone by ANSI/CGATS TR 006, relative to its paper, by level. */
const blacks = kept(blackLightness);

/** A step of L* that is too large to go unseen in a smooth tone: a tone can be off by half of it. */
const LARGE_STEP = 1;

/**
 * Whether 8 bits are too few for the tone curve of a grey profile.
 * @throws RemedyError where it is no grey profile, or damaged
 */
export const isCoarse = async (icc: Uint8Array | null): Promise<boolean> =>
  (await largestStep(icc)) > LARGE_STEP;

/**
 * A step of L* by which shadows fall apart: the first shade that there is beside black is grey already. A linear curve has
 * one of 3.5; those of presses and usual gammas stay well below (own choice).
 */
const HOLE = 3;

/** Why a picture cannot be coded in 8 bits by a grey profile, and what to do; null where it can. */
export async function lostInJpeg(icc: Uint8Array | null): Promise<string | null> {
  const step = await largestStep(icc);
  return step > HOLE
    ? `Its shadows would print as steps: a JPEG has 8 bits a channel, and by the named grey profile its levels lie up to L* ${step.toFixed(1)} apart. Have it written as TIFF or PNG ("--as tiff"), which gets 16 bits, or name another profile.`
    : null;
}

/** Of 8 bits, L*. */
async function largestStep(icc: Uint8Array | null): Promise<number> {
  if (!icc) return 0;
  const levels = await levelsOf(icc, 8);
  return levels.reduce((most, L, i) => (i > 0 ? Math.max(most, Math.abs(L - levels[i - 1])) : most), 0);
}

/** L* of a grey profile's levels. */
async function levelsOf(icc: Uint8Array, bits: 8 | 16): Promise<Float32Array> {
  const { meaning, profile } = await readingOf({ space: 'grey', icc });
  if (profile?.space !== 'grey')
    throw new RemedyError(
      profile
        ? `The grey profile cannot be used: "${profile.description}" is no profile of one grey channel. Name another, or none.`
        : 'The grey profile cannot be used: it is damaged. Name another, or none.',
    );
  return rampLightness(meaning, 'grey', 2 ** bits);
}

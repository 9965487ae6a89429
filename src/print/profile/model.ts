import { labToXyz, xyzToLab } from '../../colour/lab';
import type { InkTable } from '../../colour/press/table';
import type { PressProfile } from '../../shared/target';
import type { InkScatter } from '../inks/drift';
import { rangeCorrection } from '../inks/substrate';
import type { PrintModel } from '../model';
import { blackOf, paperOf } from './read';

/**
 * How far a press in order stands from its own profile, CIELAB of mid-tone greys, beyond the drift of its inks: one SD
 * (own choice, about the accuracy of good profiles).
 */
const ERROR = { a: 0.4, b: 0.5 };

/** A CMYK profile as an ink table. */
export function profileTable(profile: PressProfile): InkTable {
  return {
    xyz(inks, out) {
      profile.lab(inks, out);
      labToXyz(out, out);
    },
  };
}

/** Scatter of a press around its own profile: its tone values drift as any; its black's shade is in the profile. */
export const aroundProfile = (scatter: InkScatter): InkScatter => ({
  tone: scatter.tone,
  blackShade: { a: 0.2, b: 0.3 },
  colouredGrey: ERROR,
});

export interface ProfileModelParts {
  profile: PressProfile;
  /** Lab (D50) of the paper to print on: the profile's own is corrected to it. */
  white: readonly [number, number, number];
  /** The process without a profile, under D50 and under the light: what is generic is taken from it as differences. */
  daylight: PrintModel;
  generic: PrintModel;
  /** Device values of this model -> what the profile takes. */
  toProfile(device: ArrayLike<number>): ArrayLike<number>;
  /** Device values of this model that print at L -> those of the generic model, whose drift stands for this one's. */
  toGeneric(device: ArrayLike<number>, L: number): ArrayLike<number>;
  /**
   * Device values of the generic model without what a profile cannot say (colour, where it is for grey alone); absent:
   * the profile says it all.
   */
  withoutColour?(device: ArrayLike<number>): ArrayLike<number>;
  dimensions: 3 | 4;
  ground: readonly string[];
}

/**
 * Colour by the print house's profile; drift, the light's change, and colour on a grey profile by the generic process.
 * For profiles that are no ink table: R, G, B and grey.
 */
export function profileModel(parts: ProfileModelParts): PrintModel {
  const { profile, white, daylight, generic, toGeneric, withoutColour } = parts;
  const correct = correction(profile, white);
  const [before, after] = [new Float64Array(3), new Float64Array(3)];
  return {
    dimensions: parts.dimensions,
    drifts: generic.drifts,
    white: [0, 1, 2].map(i => white[i] + generic.white[i] - daylight.white[i]) as [number, number, number],
    lab(device, drift, out) {
      profile.lab(parts.toProfile(device), out);
      correct(out);
      if (!drift && !withoutColour && generic === daylight) return;
      const own = toGeneric(device, out[0]);
      daylight.lab(withoutColour ? withoutColour(own) : own, null, before);
      generic.lab(own, drift, after);
      for (let i = 0; i < 3; i++) out[i] += after[i] - before[i];
    },
    dataSpread(L, device) {
      const seen = generic === daylight ? null : generic.dataSpread(L, toGeneric(device, L));
      const known = seen && daylight.dataSpread(L, toGeneric(device, L));
      const depth = Math.min(1, Math.max(0, (white[0] - L) / 20));
      // of the generic spread only what the light adds: what the process leaves open, the profile settles
      const light = (i: 'a' | 'b') => (seen && known ? Math.max(0, seen[i] ** 2 - known[i] ** 2) : 0);
      return {
        a: Math.sqrt((depth * ERROR.a) ** 2 + light('a')),
        b: Math.sqrt((depth * ERROR.b) ** 2 + light('b')),
      };
    },
    ground: parts.ground,
  };
}

/** Moves the profile's colours from its own paper to another, its black kept. Changes Lab in place. */
function correction(profile: PressProfile, white: ArrayLike<number>): (lab: Float64Array) => void {
  const xyzOf = (values: number[]) => {
    const out = new Float64Array(3);
    profile.lab(values, out);
    return labToXyz(out, out);
  };
  const own = xyzOf(paperOf(profile.space));
  const black = xyzOf(blackOf(profile.space));
  const wanted = labToXyz(white, new Float64Array(3));
  if ([0, 1, 2].every(i => Math.abs(wanted[i] - own[i]) < 1e-6)) return () => {};
  const moves = [0, 1, 2].map(i => rangeCorrection(own[i], wanted[i], black[i], black[i]));
  return lab => {
    labToXyz(lab, lab);
    for (let i = 0; i < 3; i++) lab[i] = Math.max(0, moves[i].slope * lab[i] + moves[i].intercept);
    xyzToLab(lab, lab);
  };
}

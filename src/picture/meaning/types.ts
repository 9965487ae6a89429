// no-unit-test: types only
import type { ProfileFacts, Remark } from '../../shared/picture';

/** What the stored numbers of a picture mean: CIELAB D50, relative to white (grey, RGB) or to bare paper (inks). */
export interface Meaning {
  /** Lab of `n` rows of stored values in the units of `Cells.values`; writes L*, a*, b* a row into `out`. */
  lab(values: Float32Array, n: number, out: Float32Array): void;
}

/** A meaning and where it comes from. */
export interface Reading {
  meaning: Meaning;
  /** The embedded profile, also where it could not be used for this picture; null without one or with a broken one. */
  profile: ProfileFacts | null;
  /** What was assumed for want of a usable profile, in words; null where the file says it itself. */
  assumed: string | null;
  remarks: Remark[];
}

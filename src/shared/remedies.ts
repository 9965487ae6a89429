// no-unit-test: types only
import type { Encoding, PictureFacts } from './picture';
import type { Raster } from './reader-protocol';
import type { Moved, RemedyEncoding } from './remedy';

/** One of several things that can be chosen, in words. */
export interface Choosable<Id extends string = string> {
  id: Id;
  name: string;
  /** What it does. */
  does: string;
}

/** What can be made of a picture, or of the pictures of a folder. */
export interface Remedies {
  encodings: Choosable<RemedyEncoding>[];
  /** Ways from colour to grey, the usual one first. */
  methods: Choosable[];
  /** The encoding that suits the rest of the book and its print, and why in words. */
  recommended: { to: RemedyEncoding; why: string };
}

/** What a person chose to make of pictures. */
export interface Made {
  to: RemedyEncoding;
  /** Id of a way from colour to grey. */
  method: string;
}

/** A result that is no file: the real conversion, shown small. */
export interface Candidate {
  raster: Raster;
  /** What it would be found to be, looked at in full size. */
  facts: PictureFacts;
  /** Largest and mean difference of a pixel's L* from the intended, before a lossy format adds its own. */
  maxError: number;
  meanError: number;
  /** Null: nothing would be moved on purpose. */
  moved: Moved | null;
  /** What a person should know: what was assumed, changed or lost. */
  told: string[];
}

/** A picture as it is and made grey in every way, small. PNG, sRGB. */
export interface MethodPictures {
  width: number;
  height: number;
  asItIs: Uint8Array;
  grey: { id: string; png: Uint8Array }[];
}

/** A candidate as it is shown. */
export interface BeforeAndAfter extends Made {
  raster: Raster;
  /** The encoding before and after, by id and in words. */
  from: { id: Encoding; name: string };
  found: { id: Encoding; name: string };
  /** How near the stored tones are to the intended, in words. */
  proof: string;
  told: string[];
  changes: ForecastChange[];
}

/** What a conversion changes in the forecast under one target. */
export interface ForecastChange {
  process: string;
  paper: string;
  light: string;
  basisWords: string;
  rows: ChangedFigure[];
  /** The other figures that change. */
  more: ChangedFigure[];
}

export interface ChangedFigure {
  label: string;
  before: string;
  after: string;
}

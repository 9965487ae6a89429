// no-unit-test: types only
import type { SmallPicture } from './reader-protocol';

/** Pictures that face each other on a spread of a book, in its order, the one that was asked about among them. */
export interface Facing {
  /** Where they are printed, in words: what `FacingPicture.drawings` are for. */
  conditions: string[];
  pictures: FacingPicture[];
}

export interface FacingPicture {
  /** Relative to the book's root. */
  path: string;
  /** Whether it is the one that was asked about. */
  own: boolean;
  /** Null where it cannot be shown. */
  small: SmallPicture | null;
  /** Whether it has left-over colour, which a drawing leaves on top. */
  residual: boolean;
  /**
   * By condition, then by possible order: what becomes of the red, green and blue of a grey, at evenly spaced values from
   * black to white, all 0-1. The orders are the same for all pictures. Null where nothing is forecast.
   */
  drawings: (FacingDrawing[] | null)[];
}

export type FacingDrawing = [red: number[], green: number[], blue: number[]];

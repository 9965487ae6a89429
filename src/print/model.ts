// no-unit-test: types only
import type { AB } from '../shared/forecast';

/** One independent cause of drift, with its standard deviations. */
export interface Drift {
  name: string;
  /** In words: "% tone value", "density". */
  unit: string;
  /** Over print houses; one house keeps its own from order to order. */
  house: number;
  /** Over orders of one house. */
  order: number;
  /** Over the pages of one order. */
  page: number;
}

/**
 * A way to turn what the print house receives into colour on paper: made for one process, one paper and one
 * light. Pure. Every new model of a process family implements this; nothing else in `print/` knows what is inside.
 */
export interface PrintModel {
  /** Device values: 4 = inks C,M,Y,K 0-1; 3 = R,G,B 0-1. */
  readonly dimensions: 3 | 4;
  readonly drifts: readonly Drift[];
  /** Lab of the bare paper under the light, adapted to D50. */
  readonly white: readonly [number, number, number];
  /**
   * Absolute CIELAB of device values, adapted to D50 by CAT16 with full adaptation under another light.
   * `drift`: how far each cause has moved, in its own unit; null = none. Writes L*, a*, b* into `out`.
   */
  lab(device: ArrayLike<number>, drift: ArrayLike<number> | null, out: Float64Array): void;
  /**
   * Spread that is not drift: data, dye sets, model against measurement, unknown spectra. One SD of a* and b* of these
   * device values, which print at lightness L. Shared by all greys of a house.
   */
  dataSpread(L: number, device: ArrayLike<number>): AB;
  /** Plain sentences: sources, and what is a guess. */
  readonly ground: readonly string[];
}

/**
 * How greys of a process that has no spectra of its own change from D50 to another light, with the observer adapted
 * (CAT16 to D50): what `spectral/` offers for ink presses. The paper's brightener is part of it.
 */
export interface LightShift {
  /** Lab of the bare paper under the light, adapted to D50. */
  readonly white: readonly [number, number, number];
  /**
   * Change of L*, a*, b* of a grey that prints at lightness L under D50; `coloured`: how much of it coloured inks make,
   * 0-1 (0 = black ink alone, which is taken as flat). Written into `out`.
   */
  shift(L: number, coloured: number, out: Float64Array): void;
  /** One SD of that change: borrowed spectra, unknown brightener. */
  spread(L: number, coloured: number): AB;
  /** Plain sentences: sources, and what is a guess. */
  readonly ground: readonly string[];
}

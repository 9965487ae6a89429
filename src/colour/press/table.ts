// no-unit-test: types only
/** Colour on the condition's own paper as a function of ink values, without drift, light or another paper. */
export interface InkTable {
  /** XYZ (Y of the perfect diffuser = 100), D50, of C, M, Y, K in 0-1. Values outside are clamped. */
  xyz(inks: ArrayLike<number>, out: Float64Array): void;
}

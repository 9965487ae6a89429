// no-unit-test: test/picture/pass holds the built kernel against a plain reference
// Patterns of lanes, kept in memory: written as constants they would be built anew at every use, in several steps.

/** Of 48 interleaved bytes (three vectors), the lanes of R, G and B; 128 gives 0. Nine vectors: R, G, B from each. */
export const PLANES: usize = memory.data<u8>([
  0, 3, 6, 9, 12, 15, 128, 128, 128, 128, 128, 128, 128, 128, 128, 128,
  128, 128, 128, 128, 128, 128, 2, 5, 8, 11, 14, 128, 128, 128, 128, 128,
  128, 128, 128, 128, 128, 128, 128, 128, 128, 128, 128, 1, 4, 7, 10, 13,
  1, 4, 7, 10, 13, 128, 128, 128, 128, 128, 128, 128, 128, 128, 128, 128,
  128, 128, 128, 128, 128, 0, 3, 6, 9, 12, 15, 128, 128, 128, 128, 128,
  128, 128, 128, 128, 128, 128, 128, 128, 128, 128, 128, 2, 5, 8, 11, 14,
  2, 5, 8, 11, 14, 128, 128, 128, 128, 128, 128, 128, 128, 128, 128, 128,
  128, 128, 128, 128, 128, 1, 4, 7, 10, 13, 128, 128, 128, 128, 128, 128,
  128, 128, 128, 128, 128, 128, 128, 128, 128, 128, 0, 3, 6, 9, 12, 15,
], 16);

/** Of the same 48 bytes, those with another channel of the same pixel behind them: all but B. */
export const NOT_LAST: usize = memory.data<u8>([
  255, 255, 0, 255, 255, 0, 255, 255, 0, 255, 255, 0, 255, 255, 0, 255,
  255, 0, 255, 255, 0, 255, 255, 0, 255, 255, 0, 255, 255, 0, 255, 255,
  0, 255, 255, 0, 255, 255, 0, 255, 255, 0, 255, 255, 0, 255, 255, 0,
], 16);

/** Of 24 interleaved 16-bit samples (three vectors), those with another channel behind them, and with two more: R. */
export const NOT_LAST_DEEP: usize = memory.data<i16>([
  -1, -1, 0, -1, -1, 0, -1, -1, 0, -1, -1, 0, -1, -1, 0, -1, -1, 0, -1, -1, 0, -1, -1, 0,
], 16);
export const FIRST_DEEP: usize = memory.data<i16>([
  -1, 0, 0, -1, 0, 0, -1, 0, 0, -1, 0, 0, -1, 0, 0, -1, 0, 0, -1, 0, 0, -1, 0, 0,
], 16);

// no-unit-test: sizes alone
/** Coefficients of a block, in the zigzag order in which they are coded (T.81, figure 5): the first is DC. */
export const BLOCK = 64;
/** Pixels along the edge of a block. */
export const EDGE = 8;

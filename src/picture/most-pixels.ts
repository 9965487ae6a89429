// no-unit-test: a number
/** The decoder's own limit in pixels. */
export const MOST_PIXELS = 0x3fff ** 2;

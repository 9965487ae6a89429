import type { Carried } from './carried';
import { turned } from './density';

/** Orientations that swap width and height (EXIF 2.32, tag 274). */
const QUARTER_TURNS = 5;

/** For pixels that were turned as the orientation tag asked. */
export function upright(carried: Carried): Carried {
  const { density, orientation } = carried;
  const across = orientation >= QUARTER_TURNS && density !== null;
  return { ...carried, orientation: 1, density: across ? turned(density) : density };
}

// no-unit-test: test/picture/pass holds the built kernel against a plain reference
// The one pass over every pixel, for WebAssembly with SIMD (AssemblyScript). The caller copies a tile of the picture
// into TILE (8-bit samples without alpha) or STORED (everything else), has it prepared and counted, and takes the
// sums of its blocks; the tables grow until the picture's end. No allocation, no dependence on the picture's size. Beside
// it what the remedies do with every pixel (tones.ts) and with coded data (coded.ts).
import { resetAlpha } from './alpha';
import { resetDeep } from './deep';
import { resetInks } from './inks';
import { END, GREYS, NEAR, PAIRS } from './layout';
import { resetLevels } from './levels';
import { resetSpread } from './rgb';

export * from './layout';
export { grey8, greySingly } from './grey';
export { rgb8, rgbSingly, spread } from './rgb';
export { inks8, inksSingly, inkTotal, coarseness } from './inks';
export { findPlain, unfindShades, WHITE, BLACK } from './plain';
export { narrow, deepSpread, deepTotal } from './deep';
export { flatten8, flatten16, leftOut, partial } from './alpha';
export { SHARES, STEPS, LAST_SUM, RAMP, LIGHTNESS, NUMBERS, weigh, isEqual } from './tones';
export { unstuff, beginRows, findRow, endRows, beginWriting, writeBlocks, endWriting } from './coded';
export { beginComparison, compare, mostDifference, sumOfDifferences } from './tones';

/** Empties all tables, for a picture of that many colour channels. */
export function reset(channels: i32): void {
  resetLevels();
  resetDeep();
  resetSpread();
  resetAlpha();
  memory.fill(GREYS, 0, 1024);
  memory.fill(PAIRS, 0, 65536 * 4);
  if (channels == 3) memory.fill(NEAR, 0, END - NEAR);
  resetInks(channels == 4);
}

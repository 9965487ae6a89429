// no-unit-test: test/remedy/grey and test/remedy/proof.test.ts hold the built kernel against plain arithmetic
// Lightness of pixels by tables, for the remedies: weighed from R, G and B, and held against another picture's. The
// tables lie where the counts of a pass do, so they are brought again for every walk.
import { NEAR, STORED, TILE } from './layout';
import { NOT_LAST } from './masks';

/** What each channel adds to a pixel's sum, by level: three times 256 i32. */
export const SHARES: usize = NEAR;
/** L* by number of a picture that is held against another: 256 f32. */
export const RAMP: usize = SHARES + 3 * 1024;
/** Steps of L* by sum: u16 for 0 to LAST_SUM. */
export const STEPS: usize = RAMP + 1024;
export const LAST_SUM: i32 = 1 << 18;
/** L* by number of what is intended: 65536 f32. */
export const LIGHTNESS: usize = STEPS + (1 << 20);
/** Numbers of the tile's pixels: u16. */
export const NUMBERS: usize = STORED;

let most: f32 = 0;
let total: f64 = 0;

/** Begins a comparison. */
export function beginComparison(): void {
  most = 0;
  total = 0;
}

/** The largest difference that `compare` has met, and the sum of all. */
export function mostDifference(): f32 {
  return most;
}
export function sumOfDifferences(): f64 {
  return total;
}

/** Numbers (steps of L*) of a tile's pixels, of R, G and B in 8 bits; `shift`: bits of a sum behind the point. */
export function weigh(pixels: i32, shift: i32): void {
  let at = TILE;
  for (let i: usize = 0; i < <usize>pixels << 1; i += 2, at += 3) {
    const sum =
      load<i32>(SHARES + (<usize>load<u8>(at) << 2)) +
      load<i32>(SHARES + (<usize>load<u8>(at, 1) << 2), 1024) +
      load<i32>(SHARES + (<usize>load<u8>(at, 2) << 2), 2048);
    const place = max<i32>(0, min<i32>(sum >> shift, LAST_SUM));
    store<u16>(NUMBERS + i, load<u16>(STEPS + (<usize>place << 1)));
  }
}

/** Whether R, G and B of each pixel of a tile are equal. */
export function isEqual(pixels: i32): bool {
  const end = TILE + <usize>pixels * 3;
  const whole = TILE + (<usize>pixels >> 4) * 48;
  let unequal = i8x16.splat(0);
  for (let at = TILE; at < whole; at += 48)
    for (let third: usize = 0; third < 48; third += 16)
      unequal = v128.or(
        unequal,
        v128.and(v128.xor(v128.load(at + third), v128.load(at + third, 1)), v128.load(NOT_LAST + third)),
      );
  if (v128.any_true(unequal)) return false;
  for (let at = whole; at < end; at += 3)
    if (load<u8>(at) != load<u8>(at, 1) || load<u8>(at) != load<u8>(at, 2)) return false;
  return true;
}

/** Holds a tile's numbers against bytes of which the first of every `step` says all of a pixel. */
export function compare(pixels: i32, step: i32): void {
  let at = TILE;
  let largest = most;
  let sum: f64 = 0;
  for (let i: usize = 0; i < <usize>pixels << 1; i += 2, at += step) {
    const wanted = load<f32>(LIGHTNESS + (<usize>load<u16>(NUMBERS + i) << 2));
    const difference = abs<f32>(wanted - load<f32>(RAMP + (<usize>load<u8>(at) << 2)));
    largest = max<f32>(largest, difference);
    sum += <f64>difference;
  }
  most = largest;
  total += sum;
}

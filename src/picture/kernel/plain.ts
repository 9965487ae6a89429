// no-unit-test: test/picture/pass holds the built kernel against a plain reference
import { COUNTS, KINDS, SUMS } from './layout';

/** Kinds of a block: neither, plain white (or bare paper), plain black. */
export const WHITE: u8 = 1;
export const BLACK: u8 = 2;

/** Of 255: a codec leaves so much beside a hard edge of what was cut off. */
const NEARLY: u32 = 1;

/** Says of each block of the tile whether it is plain, by the means of its stored values. */
export function findPlain(width: i32, channels: i32): void {
  const blocks = (width + 7) >> 3;
  for (let block = 0; block < blocks; block++) {
    const count: u32 = load<u8>(COUNTS + block);
    const sums = SUMS + (block << 3);
    store<u8>(KINDS + block, count == 0 ? 0 : channels == 4 ? kindOfInks(sums, count) : kindOf(sums, count, channels));
  }
}

function kindOf(sums: usize, count: u32, channels: i32): u8 {
  let white = true;
  let black = true;
  for (let channel = 0; channel < channels; channel++) {
    const sum: u32 = load<u16>(sums + (channel << 1));
    white = white && sum >= (255 - NEARLY) * count;
    black = black && sum <= NEARLY * count;
  }
  return white ? WHITE : black ? BLACK : 0;
}

/** Black ink alone makes black; paper is bare where no ink is. */
function kindOfInks(sums: usize, count: u32): u8 {
  if (<u32>load<u16>(sums, 6) >= (255 - NEARLY) * count) return BLACK;
  for (let ink = 0; ink < 4; ink++) if (<u32>load<u16>(sums + (ink << 1)) > NEARLY * count) return 0;
  return WHITE;
}

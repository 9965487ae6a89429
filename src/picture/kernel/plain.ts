// no-unit-test: test/picture/pass holds the built kernel against a plain reference
import { COUNTS, KINDS, MASK, STORED, SUMS } from './layout';

/** Kinds of a block: neither, plain white (or bare paper), plain black. */
export const WHITE: u8 = 1;
export const BLACK: u8 = 2;

/** Of 255: a codec leaves so much beside a hard edge of what was cut off. */
const NEARLY: u32 = 1;
/** Of 65535: one step of 12 bits. Above it a linear picture still has shades, L* 0.2 to 3.5 up to one step of 255. */
const NEARLY_DEEP: u64 = 16;

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

/**
 * Takes back the black of blocks of grey or RGB whose 16-bit samples (STORED, `step` a pixel) lie apart from the end of
 * their scale: very dark is not cut off. `masked`: pixels whose mask is 0 are left out.
 */
export function unfindShades(width: i32, rows: i32, channels: i32, step: i32, masked: bool): void {
  const blocks = (width + 7) >> 3;
  for (let block = 0; block < blocks; block++) {
    if (load<u8>(KINDS + block) != BLACK) continue;
    const end = min((block + 1) << 3, width);
    let sum: u64 = 0;
    for (let y = 0; y < rows; y++)
      for (let i = y * width + (block << 3); i < y * width + end; i++) {
        if (masked && load<u8>(MASK + i) == 0) continue;
        for (let c = 0; c < channels; c++) sum += load<u16>(STORED + (<usize>(i * step + c) << 1));
      }
    if (sum > NEARLY_DEEP * load<u8>(COUNTS + block) * channels) store<u8>(KINDS + block, 0);
  }
}

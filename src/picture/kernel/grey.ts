// no-unit-test: test/picture/pass holds the built kernel against a plain reference
import { addToBlock, bump, countInBlock, resetBlocks, storeSums } from './blocks';
import { COUNTS, GREYS, MASK, PAIRS, SCRATCH, TILE } from './layout';
import { addBlockSums, addByteRange, addLevel } from './levels';

/**
 * Counts a tile of 8-bit grey: block sums, table of greys, range. Whole pairs of blocks in vectors, the rest singly.
 * `ranged`: the tile's own range and sum are the picture's (it was neither composited nor narrowed).
 */
export function grey8(width: i32, rows: i32, ranged: bool): void {
  const whole = width & ~15;
  let least = i8x16.splat(-1);
  let most = i8x16.splat(0);
  for (let x = 0; x < whole; x += 16) {
    let sums = i16x8.splat(0);
    let row = TILE + x;
    for (let y = 0; y < rows; y++, row += width) {
      const v = v128.load(row);
      least = v128.min<u8>(least, v);
      most = v128.max<u8>(most, v);
      sums = v128.add<i16>(sums, v128.extadd_pairwise<u8>(v));
      tallyPairs(row, 16);
    }
    const block = x >> 3;
    storeSums(block, 0, sums);
    store<u8>(COUNTS + block, rows << 3);
    store<u8>(COUNTS + block, rows << 3, 1);
  }
  if (ranged && whole > 0) addByteRange(0, least, most);
  greySingly(whole, width, rows, false, ranged);
  if (ranged) addBlockSums(width, 1);
}

/** The same, pixel by pixel from column `from` on; `masked`: pixels whose mask is 0 are left out. */
export function greySingly(from: i32, width: i32, rows: i32, masked: bool, ranged: bool): void {
  resetBlocks(from >> 3, (width + 7) >> 3);
  for (let y = 0; y < rows; y++)
    for (let x = from; x < width; x++) {
      const i = y * width + x;
      if (masked && load<u8>(MASK + i) == 0) continue;
      const v: u32 = load<u8>(TILE + i);
      addToBlock(x >> 3, 0, v);
      countInBlock(x >> 3);
      bump(GREYS + (v << 2));
      if (ranged) addLevel(0, v, v, 0);
    }
}

/** Counts `n` greys (even), which lie side by side, in pairs. */
// @ts-ignore: decorator
@inline
export function tallyPairs(at: usize, n: usize): void {
  for (let i: usize = 0; i < n; i += 2) bump(PAIRS + (<usize>load<u16>(at + i) << 2));
}

/** Counts the sixteen greys of a vector. */
// @ts-ignore: decorator
@inline
export function tallyGreys(greys: v128): void {
  v128.store(SCRATCH, greys);
  tallyPairs(SCRATCH, 16);
}

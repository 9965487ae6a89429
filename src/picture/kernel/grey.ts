import { addToBlock, bump, countInBlock, resetBlocks } from './blocks';
import { COUNTS, GREYS, MASK, SCRATCH, SUMS, TILE } from './layout';
import { addBlockSums, addByteRanges, addLevel } from './levels';

/** Counts a tile of 8-bit grey: block sums, table of greys, range. Whole pairs of blocks in vectors, the
 * rest singly. `ranged`: the tile's own range and sum are the picture's (not composited, not narrowed). */
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
      tally(row);
    }
    const pairs = v128.extadd_pairwise<u16>(sums);
    const block = x >> 3;
    const at = SUMS + (block << 3);
    store<u64>(at, v128.extract_lane<u32>(pairs, 0) + v128.extract_lane<u32>(pairs, 1));
    store<u64>(at + 8, v128.extract_lane<u32>(pairs, 2) + v128.extract_lane<u32>(pairs, 3));
    store<u8>(COUNTS + block, rows << 3);
    store<u8>(COUNTS + block + 1, rows << 3);
  }
  v128.store(SCRATCH, least);
  v128.store(SCRATCH + 16, most);
  if (ranged && whole > 0) addByteRanges(SCRATCH, SCRATCH + 16, 16, 1);
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

// @ts-ignore: decorator
@inline
function tally(row: usize): void {
  for (let i: usize = 0; i < 16; i += 4) {
    bump(GREYS + (<usize>load<u8>(row + i) << 2));
    bump(GREYS + 1024 + (<usize>load<u8>(row + i, 1) << 2));
    bump(GREYS + 2048 + (<usize>load<u8>(row + i, 2) << 2));
    bump(GREYS + 3072 + (<usize>load<u8>(row + i, 3) << 2));
  }
}

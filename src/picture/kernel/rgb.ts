import { addToBlock, apart8, bump, countInBlock, resetBlocks } from './blocks';
import { COUNTS, FAR, GREYS, MASK, NEAR, RANGES, SCRATCH, SEEN, SUMS, TILE } from './layout';
import { addBlockSums, addByteRanges, addLevel } from './levels';

/** Largest difference between two channels of one pixel so far, in 8-bit steps. */
export let spread: u32 = 0;

export function resetSpread(): void {
  spread = 0;
}

/** Spread of one pixel of 8-bit samples. */
export function widenSpread(at: usize): void {
  const r: u32 = load<u8>(at);
  const g: u32 = load<u8>(at, 1);
  const b: u32 = load<u8>(at, 2);
  spread = max<u32>(spread, max<u32>(r, max<u32>(g, b)) - min<u32>(r, min<u32>(g, b)));
}

/**
 * Counts a tile of 8-bit RGB: block sums, joint table, range, spread. Sixteen pixels (48 samples, two blocks wide) at
 * a time in three vectors, never taken apart: sample i and its neighbours i + 1 and i + 2 hold all three differences
 * of a pixel where i is its R, two of them, and where i is its G, one.
 */
export function rgb8(width: i32, rows: i32, ranged: bool): void {
  const whole = width & ~15;
  const stride = <usize>width * 3;
  // -1 on R and G (difference to the next sample), on R (to the one after)
  const next0 = i8x16(-1, -1, 0, -1, -1, 0, -1, -1, 0, -1, -1, 0, -1, -1, 0, -1);
  const next1 = i8x16(-1, 0, -1, -1, 0, -1, -1, 0, -1, -1, 0, -1, -1, 0, -1, -1);
  const next2 = i8x16(0, -1, -1, 0, -1, -1, 0, -1, -1, 0, -1, -1, 0, -1, -1, 0);
  const after0 = i8x16(-1, 0, 0, -1, 0, 0, -1, 0, 0, -1, 0, 0, -1, 0, 0, -1);
  const after1 = i8x16(0, 0, -1, 0, 0, -1, 0, 0, -1, 0, 0, -1, 0, 0, -1, 0);
  const after2 = i8x16(0, -1, 0, 0, -1, 0, 0, -1, 0, 0, -1, 0, 0, -1, 0, 0);
  let least0 = i8x16.splat(-1);
  let least1 = least0;
  let least2 = least0;
  let most0 = i8x16.splat(0);
  let most1 = most0;
  let most2 = most0;
  let apart = most0;
  for (let x = 0; x < whole; x += 16) {
    let sum0 = i16x8.splat(0);
    let sum1 = sum0;
    let sum2 = sum0;
    let sum3 = sum0;
    let sum4 = sum0;
    let sum5 = sum0;
    let low0 = i8x16.splat(-1);
    let low1 = low0;
    let low2 = low0;
    let high0 = i8x16.splat(0);
    let high1 = high0;
    let high2 = high0;
    let row = TILE + <usize>x * 3;
    for (let y = 0; y < rows; y++, row += stride) {
      const v0 = v128.load(row);
      const v1 = v128.load(row, 16);
      const v2 = v128.load(row, 32);
      low0 = v128.min<u8>(low0, v0);
      low1 = v128.min<u8>(low1, v1);
      low2 = v128.min<u8>(low2, v2);
      high0 = v128.max<u8>(high0, v0);
      high1 = v128.max<u8>(high1, v1);
      high2 = v128.max<u8>(high2, v2);
      sum0 = v128.add<i16>(sum0, v128.extend_low<u8>(v0));
      sum1 = v128.add<i16>(sum1, v128.extend_high<u8>(v0));
      sum2 = v128.add<i16>(sum2, v128.extend_low<u8>(v1));
      sum3 = v128.add<i16>(sum3, v128.extend_high<u8>(v1));
      sum4 = v128.add<i16>(sum4, v128.extend_low<u8>(v2));
      sum5 = v128.add<i16>(sum5, v128.extend_high<u8>(v2));
      const n0 = v128.load(row, 1);
      const n1 = v128.load(row, 17);
      const n2 = v128.load(row, 33);
      // R = G and G = B for all sixteen
      const unequal = v128.or(
        v128.or(v128.and(v128.xor(v0, n0), next0), v128.and(v128.xor(v1, n1), next1)),
        v128.and(v128.xor(v2, n2), next2),
      );
      if (!v128.any_true(unequal)) {
        tallyGreys(row);
        continue;
      }
      apart = v128.max<u8>(
        apart,
        v128.max<u8>(
          v128.max<u8>(v128.and(apart8(v0, n0), next0), v128.and(apart8(v0, v128.load(row, 2)), after0)),
          v128.max<u8>(v128.and(apart8(v1, n1), next1), v128.and(apart8(v1, v128.load(row, 18)), after1)),
        ),
      );
      apart = v128.max<u8>(
        apart,
        v128.max<u8>(v128.and(apart8(v2, n2), next2), v128.and(apart8(v2, v128.load(row, 34)), after2)),
      );
      tallyColours(row);
    }
    v128.store(SCRATCH, sum0);
    v128.store(SCRATCH + 16, sum1);
    v128.store(SCRATCH + 32, sum2);
    v128.store(SCRATCH + 48, sum3);
    v128.store(SCRATCH + 64, sum4);
    v128.store(SCRATCH + 80, sum5);
    storeBlock(x >> 3, SCRATCH, rows);
    storeBlock((x >> 3) + 1, SCRATCH + 48, rows);
    v128.store(SCRATCH, low0);
    v128.store(SCRATCH + 16, low1);
    v128.store(SCRATCH + 32, low2);
    v128.store(SCRATCH + 48, high0);
    v128.store(SCRATCH + 64, high1);
    v128.store(SCRATCH + 80, high2);
    storeRange(x >> 3, SCRATCH);
    storeRange((x >> 3) + 1, SCRATCH + 24);
    least0 = v128.min<u8>(least0, low0);
    least1 = v128.min<u8>(least1, low1);
    least2 = v128.min<u8>(least2, low2);
    most0 = v128.max<u8>(most0, high0);
    most1 = v128.max<u8>(most1, high1);
    most2 = v128.max<u8>(most2, high2);
  }
  if (whole > 0) {
    v128.store(SCRATCH, least0);
    v128.store(SCRATCH + 16, least1);
    v128.store(SCRATCH + 32, least2);
    v128.store(SCRATCH + 48, most0);
    v128.store(SCRATCH + 64, most1);
    v128.store(SCRATCH + 80, most2);
    if (ranged) addByteRanges(SCRATCH, SCRATCH + 48, 48, 3);
    v128.store(SCRATCH, apart);
    for (let lane = 0; lane < 16; lane++) spread = max<u32>(spread, load<u8>(SCRATCH + lane));
  }
  rgbSingly(whole, width, rows, false, ranged);
  if (ranged) addBlockSums(width, 3);
}

/** The same, pixel by pixel from column `from` on; `masked`: pixels whose mask is 0 are left out. */
export function rgbSingly(from: i32, width: i32, rows: i32, masked: bool, ranged: bool): void {
  resetBlocks(from >> 3, (width + 7) >> 3);
  for (let block = from >> 3; block < (width + 7) >> 3; block++) store<u16>(RANGES + (block << 1), 0x00ff);
  for (let y = 0; y < rows; y++)
    for (let x = from; x < width; x++) {
      const i = y * width + x;
      if (masked && load<u8>(MASK + i) == 0) continue;
      const at = TILE + <usize>i * 3;
      const r: u32 = load<u8>(at);
      const g: u32 = load<u8>(at, 1);
      const b: u32 = load<u8>(at, 2);
      const block = x >> 3;
      addToBlock(block, 0, r);
      addToBlock(block, 1, g);
      addToBlock(block, 2, b);
      countInBlock(block);
      widenRange(block, g);
      tallyColour(r, g, b);
      widenSpread(at);
      if (!ranged) continue;
      addLevel(0, r, r, 0);
      addLevel(1, g, g, 0);
      addLevel(2, b, b, 0);
    }
}

/** Sums of the 24 lanes (u16) of one block: eight columns of R, G, B. */
function storeBlock(block: i32, lanes: usize, rows: i32): void {
  let r: u32 = 0;
  let g: u32 = 0;
  let b: u32 = 0;
  for (let i: usize = 0; i < 48; i += 6) {
    r += load<u16>(lanes + i);
    g += load<u16>(lanes + i, 2);
    b += load<u16>(lanes + i, 4);
  }
  const at = SUMS + (block << 3);
  store<u16>(at, <u16>r);
  store<u16>(at, <u16>g, 2);
  store<u16>(at, <u16>b, 4);
  store<u8>(COUNTS + block, rows << 3);
}

/** Least and most G of one block: eight columns of R, G, B at `lanes`, the most 48 bytes further. */
function storeRange(block: i32, lanes: usize): void {
  let least: u32 = 255;
  let most: u32 = 0;
  for (let i: usize = 1; i < 24; i += 3) {
    least = min<u32>(least, load<u8>(lanes + i));
    most = max<u32>(most, load<u8>(lanes + i, 48));
  }
  store<u8>(RANGES + (block << 1), least);
  store<u8>(RANGES + (block << 1), most, 1);
}

// @ts-ignore: decorator
@inline
function widenRange(block: i32, g: u32): void {
  const at = RANGES + (block << 1);
  store<u8>(at, min<u32>(load<u8>(at), g));
  store<u8>(at, max<u32>(load<u8>(at, 1), g), 1);
}

// @ts-ignore: decorator
@inline
function tallyGreys(row: usize): void {
  for (let i: usize = 0; i < 48; i += 12) {
    bump(GREYS + (<usize>load<u8>(row + i) << 2));
    bump(GREYS + 1024 + (<usize>load<u8>(row + i, 3) << 2));
    bump(GREYS + 2048 + (<usize>load<u8>(row + i, 6) << 2));
    bump(GREYS + 3072 + (<usize>load<u8>(row + i, 9) << 2));
  }
}

// @ts-ignore: decorator
@inline
function tallyColours(row: usize): void {
  for (let i: usize = 0; i < 48; i += 3)
    tallyColour(load<u8>(row + i), load<u8>(row + i, 1), load<u8>(row + i, 2));
}

// @ts-ignore: decorator
@inline
function tallyColour(r: u32, g: u32, b: u32): void {
  const red = r - g + 32;
  const blue = b - g + 32;
  if ((red | blue) < 64) bump(NEAR + ((((g << 6) | red) << 8) | (blue << 2)));
  else {
    const cell = ((r >> 2) << 12) | ((g >> 2) << 6) | (b >> 2);
    bump(FAR + (cell << 2));
    const at = SEEN + (cell << 3);
    store<u64>(at, load<u64>(at) | (<u64>1 << (((r & 3) << 4) | ((g & 3) << 2) | (b & 3))));
  }
}

// no-unit-test: test/picture/pass holds the built kernel against a plain reference
import { addToBlock, apart8, bump, countInBlock, resetBlocks, storeRanges, storeSums } from './blocks';
import { tallyGreys } from './grey';
import { COUNTS, FAR, MASK, NEAR, RANGES, SCRATCH, TILE } from './layout';
import { addBlockSums, addByteRange, addLevel } from './levels';
import { NOT_LAST, PLANES } from './masks';

/** Largest difference between two channels of one pixel so far, in 8-bit steps. */
export let spread: u32 = 0;

export function resetSpread(): void {
  spread = 0;
}

/**
 * Counts a tile of 8-bit RGB: block sums, joint table, range, spread. Sixteen pixels (two blocks wide) at a time, their
 * channels taken apart into three vectors; where all sixteen are grey, one of them says it all. `ranged`: see grey8.
 */
export function rgb8(width: i32, rows: i32, ranged: bool): void {
  const whole = width & ~15;
  const stride = <usize>width * 3;
  const none = i8x16.splat(0);
  const all = i8x16.splat(-1);
  const beyondNear = i8x16.splat(-32);
  const green0 = v128.load(PLANES, 48);
  const green1 = v128.load(PLANES, 64);
  const green2 = v128.load(PLANES, 80);
  const pairs0 = v128.load(NOT_LAST);
  const pairs1 = v128.load(NOT_LAST, 16);
  const pairs2 = v128.load(NOT_LAST, 32);
  let leastGrey = all;
  let leastR = all;
  let leastG = all;
  let leastB = all;
  let mostGrey = none;
  let mostR = none;
  let mostG = none;
  let mostB = none;
  let apart = none;
  for (let x = 0; x < whole; x += 16) {
    let sumGrey = none;
    let sumR = none;
    let sumG = none;
    let sumB = none;
    let low = all;
    let high = none;
    let row = TILE + <usize>x * 3;
    for (let y = 0; y < rows; y++, row += stride) {
      const v0 = v128.load(row);
      const v1 = v128.load(row, 16);
      const v2 = v128.load(row, 32);
      const g = plane(v0, v1, v2, green0, green1, green2);
      low = v128.min<u8>(low, g);
      high = v128.max<u8>(high, g);
      // R = G and G = B for all sixteen: each byte but B equals the next
      const unequal = v128.or(
        v128.and(v128.xor(v0, v128.load(row, 1)), pairs0),
        v128.or(
          v128.and(v128.xor(v1, v128.load(row, 17)), pairs1),
          v128.and(v128.xor(v2, v128.load(row, 33)), pairs2),
        ),
      );
      if (!v128.any_true(unequal)) {
        sumGrey = v128.add<i16>(sumGrey, v128.extadd_pairwise<u8>(g));
        leastGrey = v128.min<u8>(leastGrey, g);
        mostGrey = v128.max<u8>(mostGrey, g);
        tallyGreys(g);
        continue;
      }
      const r = plane(v0, v1, v2, v128.load(PLANES), v128.load(PLANES, 16), v128.load(PLANES, 32));
      const b = plane(v0, v1, v2, v128.load(PLANES, 96), v128.load(PLANES, 112), v128.load(PLANES, 128));
      sumR = v128.add<i16>(sumR, v128.extadd_pairwise<u8>(r));
      sumG = v128.add<i16>(sumG, v128.extadd_pairwise<u8>(g));
      sumB = v128.add<i16>(sumB, v128.extadd_pairwise<u8>(b));
      leastR = v128.min<u8>(leastR, r);
      leastB = v128.min<u8>(leastB, b);
      mostR = v128.max<u8>(mostR, r);
      mostB = v128.max<u8>(mostB, b);
      const fromGreen = v128.max<u8>(apart8(r, g), apart8(b, g));
      apart = v128.max<u8>(apart, v128.max<u8>(fromGreen, apart8(r, b)));
      if (v128.any_true(v128.and(fromGreen, beyondNear))) tallyColours(row);
      else {
        tallyNear(v128.extend_low<u8>(r), v128.extend_low<u8>(g), v128.extend_low<u8>(b));
        tallyNear(v128.extend_high<u8>(r), v128.extend_high<u8>(g), v128.extend_high<u8>(b));
      }
    }
    const block = x >> 3;
    storeSums(block, 0, v128.add<i16>(sumR, sumGrey));
    storeSums(block, 1, v128.add<i16>(sumG, sumGrey));
    storeSums(block, 2, v128.add<i16>(sumB, sumGrey));
    store<u8>(COUNTS + block, rows << 3);
    store<u8>(COUNTS + block, rows << 3, 1);
    storeRanges(block, low, high);
    leastG = v128.min<u8>(leastG, low);
    mostG = v128.max<u8>(mostG, high);
  }
  if (ranged && whole > 0) {
    addByteRange(0, v128.min<u8>(leastR, leastGrey), v128.max<u8>(mostR, mostGrey));
    addByteRange(1, leastG, mostG);
    addByteRange(2, v128.min<u8>(leastB, leastGrey), v128.max<u8>(mostB, mostGrey));
  }
  v128.store(SCRATCH, apart);
  for (let lane: usize = 0; lane < 16; lane++) spread = max<u32>(spread, load<u8>(SCRATCH + lane));
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
      spread = max<u32>(spread, max<u32>(r, max<u32>(g, b)) - min<u32>(r, min<u32>(g, b)));
      if (!ranged) continue;
      addLevel(0, r, r, 0);
      addLevel(1, g, g, 0);
      addLevel(2, b, b, 0);
    }
}

/** One channel of sixteen interleaved pixels. */
// @ts-ignore: decorator
@inline
function plane(v0: v128, v1: v128, v2: v128, mask0: v128, mask1: v128, mask2: v128): v128 {
  return v128.or(v128.or(v128.swizzle(v0, mask0), v128.swizzle(v1, mask1)), v128.swizzle(v2, mask2));
}

// @ts-ignore: decorator
@inline
function widenRange(block: i32, g: u32): void {
  const at = RANGES + (block << 1);
  store<u8>(at, min<u32>(load<u8>(at), g));
  store<u8>(at, max<u32>(load<u8>(at, 1), g), 1);
}

// The place of a pixel in NEAR: ((R - G + 32) x 64 + (B - G + 32)) x 256 + G, which is linear in R, G, B. Neighbouring
// greys lie side by side, and not where they would push each other out of the cache.
const OF_RED: i16 = 64 * 256;
const OF_GREEN: i16 = 1 - 65 * 256;
const MIDDLE: usize = (32 * 65 * 256) << 2;

/** Counts eight pixels near neutral, their channels as u16. */
// @ts-ignore: decorator
@inline
function tallyNear(r: v128, g: v128, b: v128): void {
  const weights = i16x8(OF_RED, OF_GREEN, OF_RED, OF_GREEN, OF_RED, OF_GREEN, OF_RED, OF_GREEN);
  const first = i32x4.dot_i16x8_s(v128.shuffle<u16>(r, g, 0, 8, 1, 9, 2, 10, 3, 11), weights);
  const second = i32x4.dot_i16x8_s(v128.shuffle<u16>(r, g, 4, 12, 5, 13, 6, 14, 7, 15), weights);
  v128.store(SCRATCH, placesOf(first, v128.extend_low<u16>(b)));
  v128.store(SCRATCH + 16, placesOf(second, v128.extend_high<u16>(b)));
  for (let i: usize = 0; i < 32; i += 4) bump(<usize>load<i32>(SCRATCH + i) + (NEAR + MIDDLE));
}

/** Four places in bytes from the middle on, by the parts of R and G and by B. */
// @ts-ignore: decorator
@inline
function placesOf(ofRedGreen: v128, blue: v128): v128 {
  return v128.shl<i32>(v128.add<i32>(ofRedGreen, v128.shl<i32>(blue, 8)), 2);
}

// @ts-ignore: decorator
@inline
function tallyColours(row: usize): void {
  for (let i: usize = 0; i < 48; i += 3)
    tallyColour(load<u8>(row + i), load<u8>(row + i, 1), load<u8>(row + i, 2));
}

/** Counts one pixel where it belongs: near neutral or beyond. */
// @ts-ignore: decorator
@inline
function tallyColour(r: u32, g: u32, b: u32): void {
  const red = r - g + 32;
  const blue = b - g + 32;
  if ((red | blue) < 64) bump(NEAR + ((((red << 6) | blue) << 10) | (g << 2)));
  else bump(FAR + (((((r >> 2) << 6) | (g >> 2)) << 8) | (b & 0xfc)));
}

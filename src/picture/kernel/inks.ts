// no-unit-test: test/picture/pass holds the built kernel against a plain reference
import { addToBlock, countInBlock, resetBlocks } from './blocks';
import { tallyPairs } from './grey';
import { COUNTS, MASK, MIX_BITS, MIXES, NEXT_MIXES, SCRATCH, SUMS, TILE } from './layout';
import { addBlockSums, addLevel } from './levels';

/** Largest sum of the four inks of one pixel so far, in steps of the 8-bit tile. */
export let inkTotal: u32 = 0;
/** How many low bits of each ink have been given up so that the table holds every mix. */
export let coarseness: u32 = 0;

let mixes: u32 = 0;
let kept: u32 = 0xffffffff;
const SLOTS: u32 = 1 << MIX_BITS;

/** `used`: whether inks are to be counted at all; their table is cleared only then. */
export function resetInks(used: bool): void {
  inkTotal = 0;
  coarseness = 0;
  mixes = 0;
  kept = 0xffffffff;
  if (used) memory.fill(MIXES, 0, SLOTS << 3);
}

/** Counts a tile of 8-bit C, M, Y, K (0 = no ink): block sums, table of mixes, range, ink total. `ranged`: see grey8. */
export function inks8(width: i32, rows: i32, ranged: bool): void {
  const whole = width & ~7;
  const coloured = i32x4.splat(0x00ffffff);
  let least = i8x16.splat(-1);
  let most = i8x16.splat(0);
  let total = i32x4.splat(0);
  for (let x = 0; x < whole; x += 8) {
    let sumLow = i16x8.splat(0);
    let sumHigh = sumLow;
    let row = TILE + (<usize>x << 2);
    for (let y = 0; y < rows; y++, row += <usize>width << 2) {
      const v0 = v128.load(row);
      const v1 = v128.load(row, 16);
      least = v128.min<u8>(least, v128.min<u8>(v0, v1));
      most = v128.max<u8>(most, v128.max<u8>(v0, v1));
      sumLow = v128.add<i16>(sumLow, v128.add<i16>(v128.extend_low<u8>(v0), v128.extend_low<u8>(v1)));
      sumHigh = v128.add<i16>(sumHigh, v128.add<i16>(v128.extend_high<u8>(v0), v128.extend_high<u8>(v1)));
      const t0 = v128.extadd_pairwise<u16>(v128.extadd_pairwise<u8>(v0));
      const t1 = v128.extadd_pairwise<u16>(v128.extadd_pairwise<u8>(v1));
      total = v128.max<u32>(total, v128.max<u32>(t0, t1));
      if (v128.any_true(v128.and(v128.or(v0, v1), coloured))) {
        for (let i: usize = 0; i < 32; i += 4) tallyMix(load<u32>(row + i));
      } else {
        // black alone, or bare paper
        v128.store(SCRATCH, v128.shuffle<u8>(v0, v1, 3, 7, 11, 15, 19, 23, 27, 31, 0, 0, 0, 0, 0, 0, 0, 0));
        tallyPairs(SCRATCH, 8);
      }
    }
    // two pixels (eight lanes) of each half left: fold them into one
    const sums = v128.add<i16>(sumLow, sumHigh);
    const folded = v128.add<i16>(sums, v128.shuffle<u16>(sums, sums, 4, 5, 6, 7, 0, 1, 2, 3));
    store<u64>(SUMS + x, v128.extract_lane<u64>(folded, 0));
    store<u8>(COUNTS + (x >> 3), rows << 3);
  }
  if (ranged && whole > 0) {
    v128.store(SCRATCH, least);
    v128.store(SCRATCH + 16, most);
    for (let lane = 0; lane < 16; lane++)
      addLevel(lane & 3, load<u8>(SCRATCH + lane), load<u8>(SCRATCH + lane, 16), 0);
  }
  v128.store(SCRATCH, total);
  for (let lane = 0; lane < 4; lane++) inkTotal = max<u32>(inkTotal, load<u32>(SCRATCH + (lane << 2)));
  inksSingly(whole, width, rows, false, ranged);
  if (ranged) addBlockSums(width, 4);
}

/** The same, pixel by pixel from column `from` on; `masked`: pixels whose mask is 0 are left out. */
export function inksSingly(from: i32, width: i32, rows: i32, masked: bool, ranged: bool): void {
  resetBlocks(from >> 3, (width + 7) >> 3);
  for (let y = 0; y < rows; y++)
    for (let x = from; x < width; x++) {
      const i = y * width + x;
      if (masked && load<u8>(MASK + i) == 0) continue;
      const at = TILE + (<usize>i << 2);
      let sum: u32 = 0;
      for (let ink = 0; ink < 4; ink++) {
        const v: u32 = load<u8>(at + ink);
        addToBlock(x >> 3, ink, v);
        if (ranged) addLevel(ink, v, v, 0);
        sum += v;
      }
      inkTotal = max<u32>(inkTotal, sum);
      countInBlock(x >> 3);
      tallyMix(load<u32>(at));
    }
}

// @ts-ignore: decorator
@inline
function slotOf(mix: u32): u32 {
  return (mix * 0x9e3779b1) >> (32 - MIX_BITS);
}

/** One more pixel of a mix. Past half a table of different mixes, a low bit of each ink is given up. */
// @ts-ignore: decorator
@inline
function tallyMix(pixel: u32): void {
  const mix = pixel & kept;
  let at = MIXES + (slotOf(mix) << 3);
  for (;;) {
    const count = load<u32>(at, 4);
    if (count == 0) {
      store<u32>(at, mix);
      store<u32>(at, 1, 4);
      if (++mixes > SLOTS >> 1) coarsen();
      return;
    }
    if (load<u32>(at) == mix) {
      store<u32>(at, count + 1, 4);
      return;
    }
    at = MIXES + (((at - MIXES) + 8) & ((SLOTS << 3) - 1));
  }
}

function coarsen(): void {
  coarseness++;
  kept = ((0xff << coarseness) & 0xff) * 0x01010101;
  mixes = 0;
  memory.copy(NEXT_MIXES, MIXES, SLOTS << 3);
  memory.fill(MIXES, 0, SLOTS << 3);
  for (let from = NEXT_MIXES; from < NEXT_MIXES + (SLOTS << 3); from += 8) {
    const count = load<u32>(from, 4);
    if (count > 0) moveMix(load<u32>(from) & kept, count);
  }
}

function moveMix(mix: u32, count: u32): void {
  let at = MIXES + (slotOf(mix) << 3);
  while (load<u32>(at, 4) != 0 && load<u32>(at) != mix) at = MIXES + (((at - MIXES) + 8) & ((SLOTS << 3) - 1));
  if (load<u32>(at, 4) == 0) {
    store<u32>(at, mix);
    mixes++;
  }
  store<u32>(at, load<u32>(at, 4) + count, 4);
}

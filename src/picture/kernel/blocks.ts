// no-unit-test: test/picture/pass holds the built kernel against a plain reference
import { COUNTS, RANGES, SUMS } from './layout';

/** Adds to one channel's sum of a block. */
// @ts-ignore: decorator
@inline
export function addToBlock(block: i32, channel: i32, value: u32): void {
  const at = SUMS + (block << 3) + (channel << 1);
  store<u16>(at, load<u16>(at) + <u16>value);
}

// @ts-ignore: decorator
@inline
export function countInBlock(block: i32): void {
  store<u8>(COUNTS + block, load<u8>(COUNTS + block) + 1);
}

export function resetBlocks(from: i32, to: i32): void {
  memory.fill(SUMS + (from << 3), 0, (to - from) << 3);
  memory.fill(COUNTS + from, 0, to - from);
}

/** Sums of one channel of two neighbouring blocks: the lower and the upper half of eight u16. */
// @ts-ignore: decorator
@inline
export function storeSums(block: i32, channel: i32, sums: v128): void {
  const pairs = v128.extadd_pairwise<u16>(sums);
  const at = SUMS + (block << 3) + (channel << 1);
  store<u16>(at, v128.extract_lane<u32>(pairs, 0) + v128.extract_lane<u32>(pairs, 1));
  store<u16>(at, v128.extract_lane<u32>(pairs, 2) + v128.extract_lane<u32>(pairs, 3), 8);
}

/** Least and most G of two neighbouring blocks: the lower and the upper half of sixteen bytes, folded to one each. */
// @ts-ignore: decorator
@inline
export function storeRanges(block: i32, low: v128, high: v128): void {
  low = v128.min<u8>(low, v128.shr<u64>(low, 32));
  low = v128.min<u8>(low, v128.shr<u64>(low, 16));
  low = v128.min<u8>(low, v128.shr<u64>(low, 8));
  high = v128.max<u8>(high, v128.shr<u64>(high, 32));
  high = v128.max<u8>(high, v128.shr<u64>(high, 16));
  high = v128.max<u8>(high, v128.shr<u64>(high, 8));
  const at = RANGES + (block << 1);
  store<u8>(at, v128.extract_lane<u8>(low, 0));
  store<u8>(at, v128.extract_lane<u8>(high, 0), 1);
  store<u8>(at, v128.extract_lane<u8>(low, 8), 2);
  store<u8>(at, v128.extract_lane<u8>(high, 8), 3);
}

/** One more occurrence in a table of u32. */
// @ts-ignore: decorator
@inline
export function bump(at: usize): void {
  store<u32>(at, load<u32>(at) + 1);
}

/** Absolute difference, lane by lane, of bytes. */
// @ts-ignore: decorator
@inline
export function apart8(a: v128, b: v128): v128 {
  return v128.or(v128.sub_sat<u8>(a, b), v128.sub_sat<u8>(b, a));
}

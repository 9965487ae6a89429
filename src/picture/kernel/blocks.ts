import { COUNTS, SUMS } from './layout';

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

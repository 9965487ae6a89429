// no-unit-test: test/picture/pass holds the built kernel against a plain reference
import { LEVELS, SCRATCH, SUMS } from './layout';

/** Widens the range and the sum of one channel. */
export function addLevel(channel: i32, least: u32, most: u32, sum: f64): void {
  const at = LEVELS + (channel << 4);
  if (least < load<u32>(at)) store<u32>(at, least);
  if (most > load<u32>(at, 4)) store<u32>(at, most, 4);
  store<f64>(at, load<f64>(at, 8) + sum, 8);
}

export function resetLevels(): void {
  for (let channel = 0; channel < 4; channel++) {
    const at = LEVELS + (channel << 4);
    store<u32>(at, u32.MAX_VALUE);
    store<u32>(at, 0, 4);
    store<f64>(at, 0, 8);
  }
}

/** Widens the range of one channel by the lanes of a vector of bytes. */
// @ts-ignore: decorator
@inline
export function addByteRange(channel: i32, least: v128, most: v128): void {
  v128.store(SCRATCH, least);
  v128.store(SCRATCH + 16, most);
  for (let lane: usize = 0; lane < 16; lane++)
    addLevel(channel, load<u8>(SCRATCH + lane), load<u8>(SCRATCH + lane, 16), 0);
}

/** Adds the sums of the tile's blocks to the channels' own. */
export function addBlockSums(width: i32, channels: i32): void {
  const blocks = (width + 7) >> 3;
  for (let channel = 0; channel < channels; channel++) {
    let sum: u32 = 0;
    for (let block = 0; block < blocks; block++) sum += load<u16>(SUMS + (block << 3) + (channel << 1));
    addLevel(channel, u32.MAX_VALUE, 0, sum);
  }
}

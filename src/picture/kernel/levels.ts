import { LEVELS, SUMS } from './layout';

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

/** Reduces vectors of bytes whose lanes go round the channels, as they lie in memory at `least` and `most`. */
export function addByteRanges(least: usize, most: usize, lanes: i32, channels: i32): void {
  for (let lane = 0; lane < lanes; lane++)
    addLevel(lane % channels, load<u8>(least + lane), load<u8>(most + lane), 0);
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

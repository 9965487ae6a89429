// no-unit-test: test/picture/pass holds the built kernel against a plain reference
import { deepPixel, to8 } from './deep';
import { MASK, STORED, TILE } from './layout';
import { addLevel } from './levels';

/** Pixels left out because they are fully transparent, and pixels seen through to the paper, so far. */
export let leftOut: u32 = 0;
export let partial: u32 = 0;

export function resetAlpha(): void {
  leftOut = 0;
  partial = 0;
}

/**
 * Takes the alpha off a tile of 8-bit pixels in STORED. Where all of them are opaque the samples go to TILE as they
 * are, and the answer is false. Otherwise the composite on `paper` (the sample value of bare paper: 255 grey and RGB,
 * 0 inks) goes to TILE, the pixels that count to MASK, and the levels are taken here, from the stored samples of the
 * pixels that count.
 */
export function flatten8(pixels: i32, channels: i32, paper: u32): bool {
  return stripped<u8>(TILE, pixels, channels) ? false : flatten<u8>(pixels, channels, paper);
}

/** The same for 16-bit pixels; an opaque tile stays in STORED, at full depth. `paper` 65535 or 0. */
export function flatten16(pixels: i32, channels: i32, paper: u32): bool {
  if (!opaque(pixels, channels)) return flatten<u16>(pixels, channels, paper);
  stripped<u16>(STORED, pixels, channels);
  return false;
}

function opaque(pixels: i32, channels: i32): bool {
  const size = <usize>(channels + 1) << 1;
  let all: u32 = 0xffff;
  let at = STORED + (<usize>channels << 1);
  for (let i = 0; i < pixels; i++, at += size) all &= load<u16>(at);
  return all == 0xffff;
}

/** Copies the pixels without their alpha, and says whether that was full in all of them. `to` may be where they are. */
function stripped<T>(to: usize, pixels: i32, channels: i32): bool {
  if (channels == 1) return strip<T>(to, pixels, 1);
  return channels == 3 ? strip<T>(to, pixels, 3) : strip<T>(to, pixels, 4);
}

/** With the number of channels known where it is compiled: four samples are moved at once, three too (the next overwrites). */
// @ts-ignore: decorator
@inline
function strip<T>(to: usize, pixels: i32, channels: usize): bool {
  const full: u32 = sizeof<T>() == 1 ? 0xff : 0xffff;
  const kept = channels * sizeof<T>();
  let from = STORED;
  let all = full;
  for (let i = 0; i < pixels; i++, from += kept + sizeof<T>(), to += kept) {
    all &= load<T>(from + kept);
    if (channels == 1) store<T>(to, load<T>(from));
    else if (sizeof<T>() == 1) store<u32>(to, load<u32>(from));
    else store<u64>(to, load<u64>(from));
  }
  return all == full;
}

function flatten<T>(pixels: i32, channels: i32, paper: u32): bool {
  const full: u32 = sizeof<T>() == 1 ? 255 : 65535;
  let from = STORED;
  for (let i = 0; i < pixels; i++, from += <usize>(channels + 1) * sizeof<T>()) {
    const alpha: u32 = load<T>(from + <usize>channels * sizeof<T>());
    store<u8>(MASK + i, alpha > 0 ? 1 : 0);
    if (alpha == 0) {
      leftOut++;
      continue;
    }
    if (alpha < full) partial++;
    for (let c = 0; c < channels; c++) {
      const at = from + <usize>c * sizeof<T>();
      const stored: u32 = load<T>(at);
      addLevel(c, stored, stored, stored);
      const seen: u32 = <u32>((<u64>stored * alpha + <u64>paper * (full - alpha) + full / 2) / full);
      store<T>(at, <T>seen);
      store<u8>(TILE + i * channels + c, sizeof<T>() == 1 ? seen : to8(seen));
    }
    if (sizeof<T>() == 2) deepPixel(from, channels);
  }
  return true;
}

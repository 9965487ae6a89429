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
  if (!opaque<u8>(pixels, channels)) return flatten<u8>(pixels, channels, paper);
  strip<u8>(TILE, pixels, channels);
  return false;
}

/** The same for 16-bit pixels; an opaque tile stays in STORED, at full depth. `paper` 65535 or 0. */
export function flatten16(pixels: i32, channels: i32, paper: u32): bool {
  if (!opaque<u16>(pixels, channels)) return flatten<u16>(pixels, channels, paper);
  strip<u16>(STORED, pixels, channels);
  return false;
}

function opaque<T>(pixels: i32, channels: i32): bool {
  const size = <usize>(channels + 1) * sizeof<T>();
  let all: u32 = 0xffff;
  let at = STORED + <usize>channels * sizeof<T>();
  for (let i = 0; i < pixels; i++, at += size) all &= load<T>(at);
  return all == (sizeof<T>() == 1 ? 255 : 65535);
}

/** Copies the pixels without their alpha; `to` may be where they are, since it never overtakes. */
function strip<T>(to: usize, pixels: i32, channels: i32): void {
  let from = STORED;
  for (let i = 0; i < pixels; i++, from += sizeof<T>())
    for (let c = 0; c < channels; c++, from += sizeof<T>(), to += sizeof<T>()) store<T>(to, load<T>(from));
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

// no-unit-test: test/picture/pass holds the built kernel against a plain reference
import { SCRATCH, STORED, TILE } from './layout';
import { addLevel } from './levels';
import { FIRST_DEEP, NOT_LAST_DEEP } from './masks';

/** Largest difference between two channels of one pixel (RGB) and largest sum of inks (CMYK), in 16-bit steps. */
export let deepSpread: u32 = 0;
export let deepTotal: u32 = 0;

export function resetDeep(): void {
  deepSpread = 0;
  deepTotal = 0;
}

/** 16 to 8 bits, rounded to the nearest step of 1/255. */
// @ts-ignore: decorator
@inline
export function to8(value: u32): u32 {
  return (value - (value >> 8) + 128) >> 8;
}

// @ts-ignore: decorator
@inline
function vectorTo8(v: v128): v128 {
  return v128.shr<u16>(v128.add<u16>(v128.sub<u16>(v, v128.shr<u16>(v, 8)), i16x8.splat(128)), 8);
}

// @ts-ignore: decorator
@inline
function apart16(a: v128, b: v128): v128 {
  return v128.or(v128.sub_sat<u16>(a, b), v128.sub_sat<u16>(b, a));
}

/**
 * Turns `samples` 16-bit samples of a tile into 8 bits and takes range, sum, spread and ink total at full depth. 24
 * samples at a time, since 24 is a whole number of pixels of one, three and four channels.
 */
export function narrow(samples: i32, channels: i32): void {
  const whole = samples - (samples % 24);
  const pairs0 = v128.load(NOT_LAST_DEEP);
  const pairs1 = v128.load(NOT_LAST_DEEP, 16);
  const pairs2 = v128.load(NOT_LAST_DEEP, 32);
  let least0 = i16x8.splat(-1);
  let least1 = least0;
  let least2 = least0;
  let most0 = i16x8.splat(0);
  let most1 = most0;
  let most2 = most0;
  let apart = most0;
  let total = most0;
  let sum0 = most0;
  let sum1 = most0;
  let sum2 = most0;
  let sum3 = most0;
  let sum4 = most0;
  let sum5 = most0;
  let from = STORED;
  let to = TILE;
  for (let i = 0; i < whole; i += 24, from += 48, to += 24) {
    const v0 = v128.load(from);
    const v1 = v128.load(from, 16);
    const v2 = v128.load(from, 32);
    least0 = v128.min<u16>(least0, v0);
    least1 = v128.min<u16>(least1, v1);
    least2 = v128.min<u16>(least2, v2);
    most0 = v128.max<u16>(most0, v0);
    most1 = v128.max<u16>(most1, v1);
    most2 = v128.max<u16>(most2, v2);
    sum0 = v128.add<i32>(sum0, v128.extend_low<u16>(v0));
    sum1 = v128.add<i32>(sum1, v128.extend_high<u16>(v0));
    sum2 = v128.add<i32>(sum2, v128.extend_low<u16>(v1));
    sum3 = v128.add<i32>(sum3, v128.extend_high<u16>(v1));
    sum4 = v128.add<i32>(sum4, v128.extend_low<u16>(v2));
    sum5 = v128.add<i32>(sum5, v128.extend_high<u16>(v2));
    v128.store(to, v128.narrow<u16>(vectorTo8(v0), vectorTo8(v1)));
    const last = vectorTo8(v2);
    store<u64>(to, v128.extract_lane<u64>(v128.narrow<u16>(last, last), 0), 16);
    if (channels == 3) {
      const n0 = v128.load(from, 2);
      const n1 = v128.load(from, 18);
      const n2 = v128.load(from, 34);
      const unequal = v128.or(
        v128.and(v128.xor(v0, n0), pairs0),
        v128.or(v128.and(v128.xor(v1, n1), pairs1), v128.and(v128.xor(v2, n2), pairs2)),
      );
      if (!v128.any_true(unequal)) continue;
      apart = v128.max<u16>(apart, v128.and(apart16(v0, n0), pairs0));
      apart = v128.max<u16>(apart, v128.and(apart16(v1, n1), pairs1));
      apart = v128.max<u16>(apart, v128.and(apart16(v2, n2), pairs2));
      apart = v128.max<u16>(apart, v128.and(apart16(v0, v128.load(from, 4)), v128.load(FIRST_DEEP)));
      apart = v128.max<u16>(apart, v128.and(apart16(v1, v128.load(from, 20)), v128.load(FIRST_DEEP, 16)));
      apart = v128.max<u16>(apart, v128.and(apart16(v2, v128.load(from, 36)), v128.load(FIRST_DEEP, 32)));
    } else if (channels == 4) {
      total = v128.max<u32>(total, v128.max<u32>(v128.max<u32>(totals(v0), totals(v1)), totals(v2)));
    }
  }
  if (whole > 0) {
    v128.store(SCRATCH, least0);
    v128.store(SCRATCH + 16, least1);
    v128.store(SCRATCH + 32, least2);
    v128.store(SCRATCH + 48, most0);
    v128.store(SCRATCH + 64, most1);
    v128.store(SCRATCH + 80, most2);
    v128.store(SCRATCH + 96, sum0);
    v128.store(SCRATCH + 112, sum1);
    v128.store(SCRATCH + 128, sum2);
    v128.store(SCRATCH + 144, sum3);
    v128.store(SCRATCH + 160, sum4);
    v128.store(SCRATCH + 176, sum5);
    for (let lane = 0; lane < 24; lane++)
      addLevel(
        lane % channels,
        load<u16>(SCRATCH + (lane << 1)),
        load<u16>(SCRATCH + (lane << 1), 48),
        <f64>load<u32>(SCRATCH + (lane << 2), 96),
      );
    v128.store(SCRATCH, apart);
    for (let lane = 0; lane < 8; lane++) deepSpread = max<u32>(deepSpread, load<u16>(SCRATCH + (lane << 1)));
    v128.store(SCRATCH, total);
    for (let lane = 0; lane < 4; lane++) deepTotal = max<u32>(deepTotal, load<u32>(SCRATCH + (lane << 2)));
  }
  for (let i = whole; i < samples; i += channels) {
    for (let c = 0; c < channels; c++) {
      const v: u32 = load<u16>(STORED + ((i + c) << 1));
      addLevel(c, v, v, v);
      store<u8>(TILE + i + c, to8(v));
    }
    deepPixel(STORED + (i << 1), channels);
  }
}

/** Sums of four neighbouring 16-bit lanes: each pixel's ink total, in every 32-bit lane. */
// @ts-ignore: decorator
@inline
function totals(v: v128): v128 {
  const pairs = v128.extadd_pairwise<u16>(v);
  return v128.add<i32>(pairs, v128.shuffle<u32>(pairs, pairs, 1, 0, 3, 2));
}

/** Spread or ink total of one pixel of 16-bit samples. */
export function deepPixel(at: usize, channels: i32): void {
  const a: u32 = load<u16>(at);
  if (channels == 1) return;
  const b: u32 = load<u16>(at, 2);
  const c: u32 = load<u16>(at, 4);
  if (channels == 3) deepSpread = max<u32>(deepSpread, max<u32>(a, max<u32>(b, c)) - min<u32>(a, min<u32>(b, c)));
  else deepTotal = max<u32>(deepTotal, a + b + c + load<u16>(at, 6));
}

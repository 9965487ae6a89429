// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
import sharp, { type Sharp } from 'sharp';
import type { Master } from './masters';
import { lightnessOf } from './same-grey';
import { tiff } from './tiff';

// The ways in which one master is stored: each the channels of a usual export, good or bad.

export const PPI = 300;

type Tint = (tone: number, x: number, y: number) => readonly [number, number, number];

const byte = (value: number) => Math.min(255, Math.max(0, Math.round(value)));

/** Fills an interleaved raster; `at` gives a pixel's channels 0-255. x and y run from 0 to 1. */
function raster(
  { width, height, tones }: Master,
  channels: 3 | 4,
  at: (tone: number, x: number, y: number) => ArrayLike<number>,
): Sharp {
  const data = Buffer.alloc(width * height * channels);
  for (let i = 0; i < tones.length; i++) {
    const values = at(tones[i], (i % width) / width, Math.floor(i / width) / height);
    for (let c = 0; c < channels; c++) data[i * channels + c] = byte(values[c]);
  }
  return sharp(data, { raw: { width, height, channels } });
}

/** R = G = B, with a tint (levels added to R, G, B) where one is named. */
export const rgb = (of: Master, tint: Tint = () => [0, 0, 0]): Sharp =>
  raster(of, 3, (tone, x, y) => {
    // a neutral pixel is rounded once, so that its three channels stay equal
    const value = byte(tone * 255);
    return tint(tone, x, y).map(extra => value + extra);
  });

/** R = G = B with an opacity (0-1). */
export const rgba = (of: Master, opacity: (x: number, y: number) => number, tint: Tint): Sharp =>
  raster(of, 4, (tone, x, y) => {
    const value = byte(tone * 255);
    return [...tint(tone, x, y).map(extra => value + extra), opacity(x, y) * 255];
  });

/** 16 bit: one channel or R = G = B. */
export function deepTiff({ width, height, tones }: Master, kind: 'grey' | 'rgb'): Buffer {
  const channels = kind === 'grey' ? 1 : 3;
  const data = new Uint16Array(width * height * channels);
  for (let i = 0; i < tones.length; i++)
    data.fill(Math.round(tones[i] * 65535), i * channels, (i + 1) * channels);
  return tiff({ width, height, kind, data, bits: 16 }, PPI);
}

/** Lab of 16 bit without colour: L* 0-100 as 0-65535, a* and b* as whole numbers with a sign (TIFF 6.0, section 23). */
export function labTiff({ width, height, tones }: Master): Buffer {
  const data = new Uint16Array(width * height * 3);
  for (let i = 0; i < tones.length; i++) data[i * 3] = Math.round(lightnessOf(tones[i]) * 655.35);
  return tiff({ width, height, kind: 'lab', data, bits: 16 }, PPI);
}

/** Four inks, given in percent for a darkness 0-1. */
export function inksTiff(
  { width, height, tones }: Master,
  at: (darkness: number) => readonly [number, number, number, number],
): Buffer {
  const data = new Uint8Array(width * height * 4);
  for (let i = 0; i < tones.length; i++) {
    const percent = at(1 - tones[i]);
    for (let ink = 0; ink < 4; ink++) data[i * 4 + ink] = byte(percent[ink] * 2.55);
  }
  return tiff({ width, height, kind: 'inks', data, bits: 8 }, PPI);
}

/** One bit: ink or no ink. */
export function lineTiff({ width, height, tones }: Master): Buffer {
  const row = Math.ceil(width / 8);
  const data = new Uint8Array(row * height);
  for (let i = 0; i < tones.length; i++) {
    const x = i % width;
    if (tones[i] >= 0.5) data[Math.floor(i / width) * row + (x >> 3)] |= 0x80 >> (x & 7);
  }
  return tiff({ width, height, kind: 'grey', data, bits: 1 }, PPI);
}

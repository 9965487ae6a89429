import type { Level, PictureFacts, Remark } from '../shared/picture';
import { judgeChroma } from './judge/chroma';
import { clippedOf } from './judge/clipped';
import { encodingOf } from './judge/encoding';
import { lightnessZones, toneOf } from './judge/lightness';
import { zonesOf } from './judge/zones';
import type { Reading } from './meaning/types';
import { tallyOf } from './pass/pass';
import type { Tally } from './pass/tally';
import { tidy } from './tidy';
import type { Header, Samples } from './types';

/**
 * What is known of one page once every pixel was looked at; the caller adds which page of which file it is. Colour is
 * judged on the composite with paper white, levels are those stored.
 */
export function factsOf(
  samples: Samples,
  header: Header,
  { meaning, profile, assumed, remarks }: Reading,
): Omit<PictureFacts, 'page' | 'sha256'> {
  const tally = tallyOf(samples);
  const { cells } = tally;
  const lab = new Float32Array(cells.length * 3);
  meaning.lab(cells.values, cells.length, lab);
  const chroma = judgeChroma(tally, lab, meaning, samples);
  const { space } = samples;
  const tone = toneOf(lab, cells);
  return tidy({
    format: header.format,
    width: samples.width,
    height: samples.height,
    channels: samples.channels,
    bits: header.bits,
    alpha: samples.alpha,
    palette: header.palette,
    space,
    encoding: encodingOf(space, header.bits, fullOf(samples), tally, chroma),
    profile,
    assumed,
    ppi: header.ppi,
    orientation: header.orientation,
    remedied: header.remedied ?? null,
    levels: tally.levels.map(level => native(level, samples, header)),
    chroma: chroma.facts,
    ink: space === 'cmyk' ? { maxTotal: tally.inkTotal, meanTotal: meanInk(tally) } : null,
    tone: tone && { ...tone, clipped: clippedOf(tally.blocks) },
    zones: zonesOf(lightnessZones(lab, cells), lab, cells, space === 'lab'),
    remarks: [...header.remarks, ...remarks, ...pixelRemarks(tally, samples)],
    unreadable: null,
  });
}

/** What stands for white, or a full ink. */
function fullOf({ data }: Samples): number {
  return data instanceof Float32Array ? 1 : data instanceof Uint8Array ? 255 : 65535;
}

/** Whole numbers fill their array whatever is stored: 12 bits back to 0-4095. */
function native(level: Level, samples: Samples, { bits }: Header): Level {
  if (samples.space === 'lab' || samples.data instanceof Float32Array) return level;
  const scale = (2 ** bits - 1) / fullOf(samples);
  return {
    min: Math.round(level.min * scale),
    max: Math.round(level.max * scale),
    mean: level.mean * scale,
  };
}

/** Percent, over the pixels that count. */
function meanInk({ blocks, pixels }: Tally): number {
  const { count } = blocks;
  let sum = 0;
  for (let i = 0; i < count.length; i++)
    if (count[i] > 0) for (let ink = 0; ink < 4; ink++) sum += blocks.mean(i, ink) * count[i];
  return (sum / 255 / Math.max(1, pixels)) * 100;
}

function pixelRemarks({ leftOut, partial, pixels, levels }: Tally, { data }: Samples): Remark[] {
  const found: Remark[] = [];
  const of = (n: number) => percent(n / (pixels + leftOut));
  if (leftOut > 0 && partial > 0)
    found.push({
      code: 'transparent',
      text: `${of(leftOut)} of the pixels are transparent and were left out; ${of(partial)} are partly so and were laid on paper white.`,
    });
  else if (leftOut > 0)
    found.push({
      code: 'transparent',
      text: `${of(leftOut)} of the pixels are transparent and were left out.`,
    });
  else if (partial > 0)
    found.push({
      code: 'transparent',
      text: `${of(partial)} of the pixels are partly transparent and were laid on paper white.`,
    });
  if (data instanceof Float32Array && levels.some(({ min, max }) => min < 0 || max > 1))
    found.push({
      code: 'float-range',
      text: 'Some values lie outside 0 to 1; they were judged as black or white.',
    });
  return found;
}

/** Two figures are enough, but 100 is a whole number. */
function percent(share: number): string {
  const value = 100 * share;
  return `${value >= 99.5 ? Math.round(value) : value.toPrecision(2)} %`;
}

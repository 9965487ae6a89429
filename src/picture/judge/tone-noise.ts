import type { Meaning } from '../meaning/types';
import { BLOCK, type Blocks, type Tally } from '../pass/tally';
import type { Strays } from './strays';
import { THRESHOLDS } from './thresholds';
import { type ToneLine, ToneTable } from './tone-line';

/** Blocks at a time, so that their Lab stays near. */
const CHUNK = 2048;

/**
 * Whether the pixels scatter about their tone by noise: much of what a pixel strays by averages away within a block,
 * which colour that belongs to the picture does not.
 * @param pixelResidual mean distance of the pixels from the tone line
 */
export function isNoise(pixelResidual: number, { distance }: Strays, { blocks, pixels }: Tally): boolean {
  if (pixelResidual < THRESHOLDS.noisy) return false;
  let sum = 0;
  for (let i = 0; i < distance.length; i++) sum += distance[i] * blocks.count[i];
  return sum <= THRESHOLDS.noiseKept * pixelResidual * Math.max(1, pixels);
}

/**
 * The tone of a noisy picture, from its blocks. Noise moves a pixel's lightness together with its colour (more green is
 * lighter): where few pixels should be, at the ends of the histogram, only those are found that noise brought there, all
 * to one side. Blocks hold an eighth of it. Lightnesses near black and white are left out, where noise is cut off and
 * its mean with it.
 * @param pixelNoise mean distance of the pixels, `blockNoise` standard deviation of the blocks, in a*, b*
 */
export function toneBeneathNoise(
  blocks: Blocks,
  meaning: Meaning,
  pixelNoise: number,
  blockNoise: number,
): ToneLine {
  const table = new ToneTable();
  const means = new Float32Array(CHUNK * blocks.channels);
  const lab = new Float32Array(CHUNK * 3);
  for (let first = 0; first < blocks.count.length; first += CHUNK) {
    const n = Math.min(CHUNK, blocks.count.length - first);
    blocks.read(first, n, means);
    meaning.lab(means, n, lab);
    table.add(lab, n, blocks.count, first);
  }
  // so many blocks that their median is as sure as wanted
  const least = BLOCK ** 2 * ((THRESHOLDS.medianError * blockNoise) / THRESHOLDS.toneError) ** 2;
  const margin = Math.ceil(pixelNoise);
  const whole = table.pixels(margin, 100 - margin) < THRESHOLDS.toneShare * table.pixels(0, 100);
  return whole ? table.line(least) : table.line(least, margin, 100 - margin);
}

/** Noise averages out less in blocks that the picture's edge or transparency cuts: these count for less. In place. */
export function steady({ distance }: Strays, { count }: Blocks): void {
  for (let i = 0; i < distance.length; i++) distance[i] *= Math.sqrt(count[i]) / BLOCK;
}

import type { Blocks, Cells } from '../pass/tally';
import { ToneHull } from './hull';
import { noiseOf } from './noise';
import { THRESHOLDS } from './thresholds';
import { onLine, type ToneLine } from './tone-line';

/** How far the blocks' mean colours lie from the picture's own tone, in the a*, b* plane. */
export interface Strays {
  /** By block; 0 where no pixel counts. */
  distance: Float32Array;
  /** Distance from which a block strays: more where the blocks are noisy (grain in colour), see `THRESHOLDS.stray`. */
  limit: number;
}

/** The line is known by whole L*. */
const SLACK = 1;

/**
 * A block that holds both dark and light mixes the tones of all lightnesses between them (black beside paper makes a
 * grey without the sepia of a middle tone, and a codec smears its chroma along the edge). So where the tone varies, a
 * block that seems to stray is measured from the convex hull of the tone line over the block's own range of lightness;
 * not so in a picture that is coloured beyond the whole line's hull, where nothing hangs on it.
 * @param lab Lab of the blocks' means
 * @param lightnessOfGreen L* by G (0-255) where blocks know their range of G (RGB), else null
 */
export function straysOf(
  blocks: Blocks,
  lab: Float32Array,
  line: ToneLine,
  lightnessOfGreen: Float64Array | null,
): Strays {
  const n = blocks.count.length;
  const offset = new Float32Array(n * 2);
  const distance = new Float32Array(n);
  for (let i = 0; i < n; i++) {
    if (blocks.count[i] === 0) continue;
    const L = lab[i * 3];
    const a = lab[i * 3 + 1] - onLine(line.a, L);
    const b = lab[i * 3 + 2] - onLine(line.b, L);
    offset[i * 2] = a;
    offset[i * 2 + 1] = b;
    distance[i] = Math.sqrt(a * a + b * b);
  }
  const limit = limitFor(noiseOf(offset, blocks.columns));
  const hull = new ToneHull(line);
  if (isColoured(blocks, lab, distance, hull)) return { distance, limit };
  const { greens } = blocks;
  for (let i = 0; i < n; i++) {
    if (distance[i] <= THRESHOLDS.stray) continue;
    const L = lab[i * 3];
    const darkest = lightnessOfGreen ? Math.min(L, lightnessOfGreen[greens[i * 2]]) : L;
    const lightest = lightnessOfGreen ? Math.max(L, lightnessOfGreen[greens[i * 2 + 1]]) : L;
    distance[i] = hull.distance(darkest - SLACK, lightest + SLACK, lab[i * 3 + 1], lab[i * 3 + 2]);
  }
  return { distance, limit };
}

function limitFor(noise: number): number {
  const { stray, strayNoise, strayMost } = THRESHOLDS;
  return Math.min(strayMost, Math.max(stray, strayNoise * noise));
}

/** Whether strong or clear colour covers its share of the picture even when measured from the whole line's hull. */
function isColoured(blocks: Blocks, lab: Float32Array, distance: Float32Array, hull: ToneHull): boolean {
  const { strong, strongShare, clear, clearShare } = THRESHOLDS;
  let pixels = 0;
  for (const count of blocks.count) pixels += count;
  let strongPixels = strongShare * pixels;
  let clearPixels = clearShare * pixels;
  for (let i = 0; i < distance.length; i++) {
    if (distance[i] <= clear) continue;
    const r = hull.distance(0, 100, lab[i * 3 + 1], lab[i * 3 + 2]);
    if (r > clear && (clearPixels -= blocks.count[i]) <= 0) return true;
    if (r > strong && (strongPixels -= blocks.count[i]) <= 0) return true;
  }
  return false;
}

/** Mean L* of the pixels with each G (0-255); where there are none, that of the next lower one. */
export function lightnessOfGreen(cells: Cells, lab: Float32Array): Float64Array {
  const sum = new Float64Array(256);
  const weight = new Float64Array(256);
  for (let i = 0; i < cells.length; i++) {
    const g = Math.round(cells.values[i * 3 + 1]);
    sum[g] += cells.count[i] * lab[i * 3];
    weight[g] += cells.count[i];
  }
  for (let g = 0, last = 0; g < 256; g++) sum[g] = last = weight[g] > 0 ? sum[g] / weight[g] : last;
  return sum;
}

import type { Meaning } from '../meaning/types';
import type { Blocks, Cells } from '../pass/tally';
import { ToneHull } from './hull';
import { zoneOf } from './lightness';
import { Noise } from './noise';
import { THRESHOLDS } from './thresholds';
import { linePoint, type ToneLine } from './tone-line';

/** How far the blocks' mean colours lie from the picture's own tone, in the a*, b* plane. */
export interface Strays {
  /** By block; 0 where no pixel counts. */
  distance: Float32Array;
  /** Lightness zone by block. */
  zone: Uint8Array;
  /** Distance from which a block strays: more where the blocks are noisy (grain in colour), see `THRESHOLDS.stray`. */
  limit: number;
  /** Standard deviation of the blocks' a*, b* by chance. */
  noise: number;
}

/** The line is known by about whole L*. */
const SLACK = 1;
/** Blocks at a time, so that their Lab stays near. */
const CHUNK = 2048;

/**
 * A block that holds both dark and light mixes the tones of all lightnesses between them (black beside paper makes a
 * grey without the sepia of a middle tone, and a codec smears its chroma along the edge). So where the tone varies, a
 * block that seems to stray is measured from the convex hull of the tone line over the block's own range of lightness;
 * not so in a picture that is coloured beyond the whole line's hull, where nothing hangs on it.
 * @param lightnessOfGreen L* by G (0-255) where blocks know their range of G (RGB), else null
 */
export function straysOf(
  blocks: Blocks,
  meaning: Meaning,
  line: ToneLine,
  lightnessOfGreen: Float64Array | null,
): Strays {
  const { count, greens } = blocks;
  const distance = new Float32Array(count.length);
  const zone = new Uint8Array(count.length);
  // Lab of those that seem to stray
  const suspect = new Float32Array(count.length * 3);
  let suspects = 0;
  const noise = new Noise();
  const means = new Float32Array(CHUNK * blocks.channels);
  const lab = new Float32Array(CHUNK * 3);
  const offset = new Float32Array(CHUNK * 2);
  for (let first = 0; first < count.length; first += CHUNK) {
    const n = Math.min(CHUNK, count.length - first);
    blocks.read(first, n, means);
    meaning.lab(means, n, lab);
    fromLine(lab, n, line, offset);
    noise.add(offset, n);
    for (let i = 0; i < n; i++) {
      const block = first + i;
      if (count[block] === 0) continue;
      zone[block] = zoneOf(lab[i * 3]);
      const a = offset[i * 2];
      const b = offset[i * 2 + 1];
      const r = Math.sqrt(a * a + b * b);
      distance[block] = r;
      if (r <= THRESHOLDS.stray) continue;
      suspects++;
      for (let c = 0; c < 3; c++) suspect[block * 3 + c] = lab[i * 3 + c];
    }
  }
  const deviation = noise.deviation();
  const strays = { distance, zone, limit: limitFor(deviation), noise: deviation };
  if (suspects === 0) return strays;
  const hull = new ToneHull(line);
  if (isColoured(blocks, suspect, distance, hull)) return strays;
  for (let i = 0; i < count.length; i++) {
    if (distance[i] <= THRESHOLDS.stray) continue;
    const L = suspect[i * 3];
    const darkest = lightnessOfGreen ? Math.min(L, lightnessOfGreen[greens[i * 2]]) : L;
    const lightest = lightnessOfGreen ? Math.max(L, lightnessOfGreen[greens[i * 2 + 1]]) : L;
    distance[i] = hull.distance(darkest - SLACK, lightest + SLACK, suspect[i * 3 + 1], suspect[i * 3 + 2]);
  }
  return strays;
}

/** a*, b* of `n` blocks from the tone line at their lightness, into `offset`. */
function fromLine(lab: Float32Array, n: number, { a, b }: ToneLine, offset: Float32Array) {
  for (let i = 0; i < n; i++) {
    const point = linePoint(lab[i * 3]);
    offset[i * 2] = lab[i * 3 + 1] - a[point];
    offset[i * 2 + 1] = lab[i * 3 + 2] - b[point];
  }
}

function limitFor(noise: number): number {
  const { stray, strayNoise, strayMost } = THRESHOLDS;
  return Math.min(strayMost, Math.max(stray, strayNoise * noise));
}

/** Whether strong or clear colour covers its share of the picture even when measured from the whole line's hull. */
function isColoured(
  { count }: Blocks,
  suspect: Float32Array,
  distance: Float32Array,
  hull: ToneHull,
): boolean {
  const { strong, strongShare, clear, clearShare } = THRESHOLDS;
  let pixels = 0;
  for (let i = 0; i < count.length; i++) pixels += count[i];
  let strongPixels = strongShare * pixels;
  let clearPixels = clearShare * pixels;
  for (let i = 0; i < distance.length; i++) {
    if (distance[i] <= clear) continue;
    const r = hull.distance(0, 100, suspect[i * 3 + 1], suspect[i * 3 + 2]);
    if (r > clear && (clearPixels -= count[i]) <= 0) return true;
    if (r > strong && (strongPixels -= count[i]) <= 0) return true;
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

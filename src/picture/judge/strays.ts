import type { Blocks, Cells } from '../pass/tally';
import { THRESHOLDS } from './thresholds';
import { onLine, type ToneLine } from './tone-line';

/** How far the blocks' mean colours lie from the picture's own tone, in the a*, b* plane. */
export interface Strays {
  /** By block; 0 where no pixel counts. */
  distance: Float32Array;
  /** Distance from which a block strays: more where the blocks are noisy (grain in colour), see `THRESHOLDS.stray`. */
  limit: number;
}

/**
 * A block that holds both dark and light mixes the tones of all lightnesses between them (black beside paper makes a
 * grey without the sepia of a middle tone, and a codec smears its chroma along the edge). So where the tone varies, a
 * block that seems to stray is measured from the convex hull of the tone line over the block's own range of lightness.
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
    if (distance[i] <= THRESHOLDS.stray) continue;
    const darkest = lightnessOfGreen ? Math.min(L, lightnessOfGreen[blocks.greens[i * 2]]) : L;
    const lightest = lightnessOfGreen ? Math.max(L, lightnessOfGreen[blocks.greens[i * 2 + 1]]) : L;
    distance[i] = fromHull(line, darkest - SLACK, lightest + SLACK, lab[i * 3 + 1], lab[i * 3 + 2]);
  }
  return { distance, limit: limitFor(noiseOf(offset, blocks.columns)) };
}

function limitFor(noise: number): number {
  const { stray, strayNoise, strayMost } = THRESHOLDS;
  return Math.min(strayMost, Math.max(stray, strayNoise * noise));
}

/** Every so many blocks one is compared: a prime, so as not to follow a column. */
const SAMPLE = 7;
/** Blocks this far apart share no codec block, even with halved chroma. */
const APART = 3;
/** Steps of the table of differences, per unit, and its end. */
const FINE = 32;
const FAR = 16;
/** Median length of the difference of two vectors over the standard deviation of their coordinates: sqrt(4 ln 2). */
const MEDIAN = Math.sqrt(4 * Math.LN2);

/** Standard deviation of the blocks' a*, b* that is noise: by the differences of near blocks, which share all else. */
function noiseOf(offset: Float32Array, columns: number): number {
  const table = new Uint32Array(FINE * FAR);
  let total = 0;
  for (let i = 0; i + APART < offset.length / 2; i += SAMPLE) {
    if (i % columns >= columns - APART) continue;
    const j = i + APART;
    const d = Math.hypot(offset[i * 2] - offset[j * 2], offset[i * 2 + 1] - offset[j * 2 + 1]);
    table[Math.min(table.length - 1, Math.floor(d * FINE))]++;
    total++;
  }
  let below = 0;
  for (let step = 0; step < table.length; step++)
    if ((below += table[step]) > total / 2) return step / FINE / MEDIAN;
  return 0;
}

/** The line is known by whole L*. */
const SLACK = 1;
/** Directions in which the hull is felt: with 24 of them a distance is too small by at most 1 %. */
const DIRECTIONS = 24;
const COS = Float64Array.from({ length: DIRECTIONS }, (_, i) => Math.cos((2 * Math.PI * i) / DIRECTIONS));
const SIN = Float64Array.from({ length: DIRECTIONS }, (_, i) => Math.sin((2 * Math.PI * i) / DIRECTIONS));

/**
 * Distance of a*, b* from the convex hull of the tone line between two lightnesses; 0 inside. Black and white have no
 * colour, so beyond the ends of the line the hull reaches to neutral.
 */
function fromHull(line: ToneLine, from: number, to: number, a: number, b: number): number {
  const first = Math.max(0, Math.floor(from));
  const last = Math.min(100, Math.ceil(to));
  const beyond = from < line.from || to > line.to;
  let most = 0;
  for (let d = 0; d < DIRECTIONS; d++) {
    let reach = beyond ? 0 : Number.NEGATIVE_INFINITY;
    for (let L = first; L <= last; L++) reach = Math.max(reach, line.a[L] * COS[d] + line.b[L] * SIN[d]);
    most = Math.max(most, a * COS[d] + b * SIN[d] - reach);
  }
  return most;
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

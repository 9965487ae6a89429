import type { Blocks, Cells } from '../pass/tally';
import { onLine, type ToneLine } from './tone-line';

/**
 * Distance of each block's mean colour from the picture's own tone, in the a*, b* plane; 0 where no pixel counts.
 *
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
  limit: number,
  lightnessOfGreen: Float64Array | null,
): Float32Array {
  const n = blocks.count.length;
  const distance = new Float32Array(n);
  for (let i = 0; i < n; i++) {
    if (blocks.count[i] === 0) continue;
    const L = lab[i * 3];
    const a = lab[i * 3 + 1] - onLine(line.a, L);
    const b = lab[i * 3 + 2] - onLine(line.b, L);
    distance[i] = Math.sqrt(a * a + b * b);
    if (distance[i] <= limit) continue;
    const darkest = lightnessOfGreen ? Math.min(L, lightnessOfGreen[blocks.greens[i * 2]]) : L;
    const lightest = lightnessOfGreen ? Math.max(L, lightnessOfGreen[blocks.greens[i * 2 + 1]]) : L;
    distance[i] = fromHull(line, darkest - SLACK, lightest + SLACK, lab[i * 3 + 1], lab[i * 3 + 2]);
  }
  return distance;
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

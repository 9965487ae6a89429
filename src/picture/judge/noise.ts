/** Every so many blocks one is compared: a prime, so as not to follow a column. */
const SAMPLE = 7;
/** Blocks this far apart share no codec block, even with halved chroma. */
const APART = 3;
/** Steps of the table of differences, per unit, and its end. */
const FINE = 32;
const FAR = 16;
/** Median length of the difference of two vectors over the standard deviation of their coordinates: sqrt(4 ln 2). */
const MEDIAN = Math.sqrt(4 * Math.LN2);

/**
 * Standard deviation of the blocks' a*, b* that is noise: by the differences of near blocks, which share all else.
 * @param offset two coordinates a block, row by row
 */
export function noiseOf(offset: Float32Array, columns: number): number {
  const table = new Uint32Array(FINE * FAR);
  let total = 0;
  for (let i = 0; i + APART < offset.length / 2; i += SAMPLE) {
    if (i % columns >= columns - APART) continue;
    const j = i + APART;
    const a = offset[i * 2] - offset[j * 2];
    const b = offset[i * 2 + 1] - offset[j * 2 + 1];
    table[Math.min(table.length - 1, (Math.sqrt(a * a + b * b) * FINE) | 0)]++;
    total++;
  }
  let below = 0;
  for (let step = 0; step < table.length; step++)
    if ((below += table[step]) > total / 2) return step / FINE / MEDIAN;
  return 0;
}

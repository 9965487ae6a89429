/** Every so many blocks one is compared: a prime, so as not to follow a column. */
const SAMPLE = 7;
/** Blocks this far apart share no codec block, even with halved chroma. */
const APART = 3;
/** Steps of the table of differences, per unit, and its end. */
const FINE = 32;
const FAR = 16;
/** Median length of the difference of two vectors over the standard deviation of their coordinates: sqrt(4 ln 2). */
const MEDIAN = Math.sqrt(4 * Math.LN2);

/** Noise of the blocks' a*, b*: by the differences of near blocks, which share all else. */
export class Noise {
  readonly #table = new Uint32Array(FINE * FAR);
  #total = 0;

  /** @param offset a*, b* of `n` blocks side by side */
  add(offset: Float32Array, n: number): void {
    for (let i = 0; i + APART < n; i += SAMPLE) {
      const j = i + APART;
      const a = offset[i * 2] - offset[j * 2];
      const b = offset[i * 2 + 1] - offset[j * 2 + 1];
      this.#table[Math.min(FINE * FAR - 1, (Math.sqrt(a * a + b * b) * FINE) | 0)]++;
      this.#total++;
    }
  }

  /** Standard deviation of either coordinate. */
  deviation(): number {
    let below = 0;
    for (let step = 0; step < FINE * FAR; step++)
      if ((below += this.#table[step]) > this.#total / 2) return step / FINE / MEDIAN;
    return 0;
  }
}

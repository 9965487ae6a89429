import { LINE_STEPS, type ToneLine } from './tone-line';

/** Directions in which the hull is felt: with 24 of them a distance is too small by at most 1 %. */
const DIRECTIONS = 24;
const COS = Float64Array.from({ length: DIRECTIONS }, (_, i) => Math.cos((2 * Math.PI * i) / DIRECTIONS));
const SIN = Float64Array.from({ length: DIRECTIONS }, (_, i) => Math.sin((2 * Math.PI * i) / DIRECTIONS));
/** Whole L* from 0 to 100, and spans of 1, 2, 4 ... 64 of them. */
const LEVELS = 101;
const SPANS = 7;

/** Convex hulls of parts of a tone line in the a*, b* plane. */
export class ToneHull {
  /** Farthest reach of the line by direction, span and first L*: any part is the union of two such spans. */
  readonly #reach = new Float64Array(DIRECTIONS * SPANS * LEVELS);

  constructor(readonly line: ToneLine) {
    const reach = this.#reach;
    for (let d = 0; d < DIRECTIONS; d++)
      for (let span = 0; span < SPANS; span++)
        for (let L = 0; L < LEVELS; L++) {
          const at = (d * SPANS + span) * LEVELS + L;
          if (span === 0) reach[at] = line.a[L * LINE_STEPS] * COS[d] + line.b[L * LINE_STEPS] * SIN[d];
          else {
            const half = Math.min(LEVELS - 1, L + (1 << (span - 1)));
            reach[at] = Math.max(reach[at - LEVELS], reach[(d * SPANS + span - 1) * LEVELS + half]);
          }
        }
  }

  /**
   * Distance of a*, b* from the hull of the line between two lightnesses; 0 inside. Black and white have no colour, so
   * beyond the ends of the line the hull reaches to neutral.
   */
  distance(from: number, to: number, a: number, b: number): number {
    const first = Math.max(0, Math.floor(from));
    const last = Math.min(LEVELS - 1, Math.ceil(to));
    const span = 31 - Math.clz32(Math.max(1, last - first + 1));
    const second = Math.max(first, last - (1 << span) + 1);
    const beyond = from < this.line.from || to > this.line.to;
    let most = 0;
    for (let d = 0; d < DIRECTIONS; d++) {
      const row = (d * SPANS + span) * LEVELS;
      let reach = Math.max(this.#reach[row + first], this.#reach[row + second]);
      if (beyond && reach < 0) reach = 0;
      const out = a * COS[d] + b * SIN[d] - reach;
      if (out > most) most = out;
    }
    return most;
  }
}

import { LINE_POINTS, LINE_STEPS, type ToneLine } from './tone-line';

/** Directions in which the hull is felt: with 24 of them a distance is too small by at most 1 %. */
const DIRECTIONS = 24;
const COS = Float64Array.from({ length: DIRECTIONS }, (_, i) => Math.cos((2 * Math.PI * i) / DIRECTIONS));
const SIN = Float64Array.from({ length: DIRECTIONS }, (_, i) => Math.sin((2 * Math.PI * i) / DIRECTIONS));
/** Spans of 1, 2, 4 ... 256 points. */
const SPANS = 9;

/** Convex hulls of parts of a tone line in the a*, b* plane. */
export class ToneHull {
  /** Farthest reach of the line by direction, span and first point: any part is the union of two such spans. */
  readonly #reach = new Float64Array(DIRECTIONS * SPANS * LINE_POINTS);

  constructor(readonly line: ToneLine) {
    const reach = this.#reach;
    for (let d = 0; d < DIRECTIONS; d++)
      for (let span = 0; span < SPANS; span++)
        for (let point = 0; point < LINE_POINTS; point++) {
          const at = (d * SPANS + span) * LINE_POINTS + point;
          if (span === 0) reach[at] = line.a[point] * COS[d] + line.b[point] * SIN[d];
          else {
            const half = Math.min(LINE_POINTS - 1, point + (1 << (span - 1)));
            reach[at] = Math.max(reach[at - LINE_POINTS], reach[(d * SPANS + span - 1) * LINE_POINTS + half]);
          }
        }
  }

  /**
   * Distance of a*, b* from the hull of the line between two lightnesses; 0 inside. Black and white have no colour, so
   * beyond the ends of the line the hull reaches to neutral.
   */
  distance(from: number, to: number, a: number, b: number): number {
    const first = Math.max(0, Math.floor(from * LINE_STEPS));
    const last = Math.min(LINE_POINTS - 1, Math.ceil(to * LINE_STEPS));
    const span = 31 - Math.clz32(Math.max(1, last - first + 1));
    const second = Math.max(first, last - (1 << span) + 1);
    const beyond = from < this.line.from || to > this.line.to;
    let most = 0;
    for (let d = 0; d < DIRECTIONS; d++) {
      const row = (d * SPANS + span) * LINE_POINTS;
      let reach = Math.max(this.#reach[row + first], this.#reach[row + second]);
      if (beyond && reach < 0) reach = 0;
      const out = a * COS[d] + b * SIN[d] - reach;
      if (out > most) most = out;
    }
    return most;
  }
}

import { THRESHOLDS } from './thresholds';

/** The picture's own tone: a*, b* at each quarter of L* from 0 to 100. */
export interface ToneLine {
  a: Float64Array;
  b: Float64Array;
  /** Lightness from and up to which the line is known; beyond, its ends are carried on. */
  from: number;
  to: number;
}

/** Points of a line for each unit of L*, and all of them. */
export const LINE_STEPS = 4;
export const LINE_POINTS = 100 * LINE_STEPS + 1;

const LEVELS = 101;
/** Tables of a* and b* in quarter units from -128 to 128, what RGB's own colours reach; what lies beyond counts at their ends. */
const BINS = 1024;
const PER_UNIT = 4;

/** Colours by lightness, from which a tone line is drawn. */
export class ToneTable {
  readonly #a = new Float64Array(LEVELS * BINS);
  readonly #b = new Float64Array(LEVELS * BINS);
  readonly #weight = new Float64Array(LEVELS);
  #total = 0;

  /** @param lab L*, a*, b* of `n` colours; `count`: pixels of each, from `first` on */
  add(lab: Float32Array, n: number, count: ArrayLike<number>, first = 0): void {
    for (let i = 0; i < n; i++) {
      const pixels = count[first + i];
      const level = clamp(Math.round(lab[i * 3]), LEVELS - 1);
      this.#weight[level] += pixels;
      this.#total += pixels;
      this.#a[level * BINS + binOf(lab[i * 3 + 1])] += pixels;
      this.#b[level * BINS + binOf(lab[i * 3 + 2])] += pixels;
    }
  }

  /** Pixels between two whole L*, these included. */
  pixels(from: number, to: number): number {
    return this.#weight.subarray(from, to + 1).reduce((sum, n) => sum + n, 0);
  }

  /**
   * Medians over runs of neighbouring lightnesses that hold enough of the picture, joined by straight lines.
   * @param least pixels that a median rests on, at least; never fewer than `THRESHOLDS.toneSupport`
   * @param from, to whole L* between which the colours are believed
   */
  line(least = 0, from = 0, to = LEVELS - 1): ToneLine {
    const wanted = Math.max(least, this.#total * THRESHOLDS.toneSupport);
    const found = withoutMarks(
      runsOf(this.#weight, wanted, from, to).map(run => ({
        L: run.L,
        weight: run.weight / this.#total,
        a: medianOf(this.#a, run.from, run.to),
        b: medianOf(this.#b, run.from, run.to),
      })),
    );
    const points = roughness(found) > THRESHOLDS.roughTone ? NEUTRAL : found;
    const at = points.map(point => point.L);
    const joined = (value: (point: Point) => number) => join(at, points.map(value));
    return { a: joined(point => point.a), b: joined(point => point.b), from: at[0], to: at[at.length - 1] };
  }
}

interface Point {
  L: number;
  a: number;
  b: number;
  /** Share of the pixels, 0-1. */
  weight: number;
}

const NEUTRAL: Point[] = [{ L: 50, a: 0, b: 0, weight: 1 }];

/**
 * How far the points lie from the straight line between their neighbours (at the ends, from the neighbour), on average
 * over the pixels. A tone changes gently with lightness; a few flat colours, each of its own lightness, jump.
 */
function roughness(points: Point[]): number {
  if (points.length < 2) return 0;
  let sum = 0;
  let weight = 0;
  for (const [i, point] of points.entries()) {
    const before = points[i - 1] ?? points[i + 1];
    const after = points[i + 1] ?? points[i - 1];
    const t = after === before ? 0 : (point.L - before.L) / (after.L - before.L);
    const a = before.a + t * (after.a - before.a);
    const b = before.b + t * (after.b - before.b);
    sum += point.weight * Math.hypot(point.a - a, point.b - b);
    weight += point.weight;
  }
  return sum / weight;
}

/** A neutral picture with colour on few lightnesses only (a sticker, a title) has no tone there. */
function withoutMarks(points: Point[]): Point[] {
  const coloured = points.filter(({ a, b }) => Math.hypot(a, b) >= THRESHOLDS.toned);
  const share = coloured.reduce((sum, point) => sum + point.weight, 0);
  const tone = share < THRESHOLDS.toneShare ? points.filter(point => !coloured.includes(point)) : points;
  return tone.length > 0 ? tone : NEUTRAL;
}

const clamp = (value: number, most: number) => Math.max(0, Math.min(value, most));
const binOf = (v: number) => clamp(Math.round(v * PER_UNIT) + BINS / 2, BINS - 1);

interface Run {
  from: number;
  to: number;
  /** Mean L*. */
  L: number;
  /** Pixels. */
  weight: number;
}

/**
 * Runs of levels between two, from dark to light, of at least `wanted` pixels each; what is left at the light end joins
 * the last.
 */
function runsOf(weight: Float64Array, wanted: number, first: number, end: number): Run[] {
  const runs: Run[] = [];
  let from = first;
  let sum = 0;
  for (let level = first; level <= end; level++) {
    sum += weight[level];
    if (sum === 0 || sum < wanted) continue;
    runs.push(runOf(weight, from, level));
    from = level + 1;
    sum = 0;
  }
  const last = runs.pop();
  if (last) runs.push(runOf(weight, last.from, end));
  else if (sum > 0) runs.push(runOf(weight, first, end));
  return runs;
}

function runOf(weight: Float64Array, from: number, to: number): Run {
  let sum = 0;
  let moment = 0;
  for (let level = from; level <= to; level++) {
    sum += weight[level];
    moment += weight[level] * level;
  }
  return { from, to, L: moment / sum, weight: sum };
}

/** Median of the table's rows `from` to `to`, placed within its bin by the counts on both sides. */
function medianOf(table: Float64Array, from: number, to: number): number {
  const pooled = new Float64Array(BINS);
  let total = 0;
  for (let level = from; level <= to; level++)
    for (let bin = 0; bin < BINS; bin++) {
      pooled[bin] += table[level * BINS + bin];
      total += table[level * BINS + bin];
    }
  let bin = 0;
  let below = 0;
  while (below + pooled[bin] < total / 2) below += pooled[bin++];
  return (bin - BINS / 2 - 0.5 + (total / 2 - below) / pooled[bin]) / PER_UNIT;
}

/** Values at all points of a line, on the straight lines through `values` at rising L* `at`; level beyond the ends. */
function join(at: number[], values: number[]): Float64Array {
  let i = 0;
  return Float64Array.from({ length: LINE_POINTS }, (_, point) => {
    const L = point / LINE_STEPS;
    while (i < at.length - 1 && at[i + 1] < L) i++;
    if (L <= at[0] || i === at.length - 1) return values[i];
    return values[i] + ((L - at[i]) / (at[i + 1] - at[i])) * (values[i + 1] - values[i]);
  });
}

/** The point of a line for any L*. */
export function linePoint(L: number): number {
  const point = (L * LINE_STEPS + 0.5) | 0;
  return point < 0 ? 0 : Math.min(point, LINE_POINTS - 1);
}

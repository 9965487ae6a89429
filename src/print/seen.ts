import type { AB } from '../shared/forecast';
import { LIMITS } from './bands';
import { ORDERS, orderDraws } from './order-draws';
import type { Moves } from './scatter';

/**
 * A tint is seen in an order if it is there on so much of the picture (0-1), by area and visibility. Own choice: a quarter
 * is a part that the eye takes in as one, such as a sky or a wall; less is a detail.
 */
export const NOTICEABLE = 0.25;

/** Lengths of a tint that is seen by itself, and of an obvious one. */
const [, VISIBLE, OBVIOUS] = LIMITS;

/** A zone of a picture: mean tint, what moves it, weight by area and visibility (of all zones 1). */
export interface TintedZone {
  weight: number;
  tint: AB;
  moves: Moves;
}

/** Probability that one order tints a noticeable part of the picture visibly, and obviously. */
export interface Seen {
  seen: number;
  seenObvious: number;
}

/**
 * Counts possible orders: one draw of every cause moves all zones together (`orderDraws`, always the same ones).
 * `expected`: the exact mean share of the picture beyond each limit, by which the count is corrected (regression on a
 * control). Of one grey it is exact; of others it is off by 0.01 (root mean square) and by 0.04 at most.
 */
export function seenIn(zones: readonly TintedZone[], expected: Seen): Seen {
  const [visible, obvious] = [new Float64Array(2 * ORDERS), new Float64Array(2 * ORDERS)];
  const [a, b] = [new Float64Array(ORDERS), new Float64Array(ORDERS)];
  for (const { weight, tint, moves } of zones) {
    moved(moves, a, b);
    for (let order = 0; order < ORDERS; order++) {
      // every draw counts with both signs
      for (let sign = -1; sign <= 1; sign += 2) {
        const x = tint.a + sign * a[order];
        const y = tint.b + sign * b[order];
        const square = x * x + y * y;
        if (square < VISIBLE * VISIBLE) continue;
        const i = sign < 0 ? order : ORDERS + order;
        visible[i] += weight;
        if (square >= OBVIOUS * OBVIOUS) obvious[i] += weight;
      }
    }
  }
  return { seen: counted(visible, expected.seen), seenObvious: counted(obvious, expected.seenObvious) };
}

/** How far each possible order moves a zone, written into `a` and `b`. */
function moved({ drift, shared }: Moves, a: Float64Array, b: Float64Array) {
  const draws = orderDraws(drift.length / 2 + 2);
  a.fill(0);
  b.fill(0);
  const add = (cause: number, da: number, db: number) => {
    if (da === 0 && db === 0) return;
    const draw = draws[cause];
    for (let order = 0; order < ORDERS; order++) {
      a[order] += da * draw[order];
      b[order] += db * draw[order];
    }
  };
  add(0, shared.a, 0);
  add(1, 0, shared.b);
  for (let i = 0; i < drift.length; i += 2) add(2 + i / 2, drift[i], drift[i + 1]);
}

/** Rounding of weights that add up to a quarter. */
const EPSILON = 1e-9;

/** Share of orders whose tinted part is noticeable, corrected by what is known of the mean part. */
function counted(parts: Float64Array, expected: number): number {
  const n = parts.length;
  let [sum, squares, count, both] = [0, 0, 0, 0];
  for (const part of parts) {
    sum += part;
    squares += part * part;
    if (part < NOTICEABLE - EPSILON) continue;
    count++;
    both += part;
  }
  const variance = squares / n - (sum / n) ** 2;
  const slope = variance > EPSILON ? (both / n - (sum * count) / (n * n)) / variance : 1;
  return Math.min(1, Math.max(0, count / n + slope * (expected - sum / n)));
}

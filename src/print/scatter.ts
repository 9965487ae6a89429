import type { AB } from '../shared/forecast';
import type { Drift } from './model';
import type { TintDistribution } from './tint';

/** Covariance of a*, b*. */
export interface Covariance {
  aa: number;
  ab: number;
  bb: number;
}

/** What moves a tint. */
export interface Moves {
  /** By one SD (order and page together) of each cause of drift: a, b, a, b, ... */
  drift: Float64Array;
  /** Spread that is no drift, one SD, shared by the whole order. */
  shared: AB;
}

/** Covariance over orders and over the pages of one order: J Sigma J^T, each with its own share of the causes. */
export function covariances(
  { drift, shared }: Moves,
  causes: readonly Drift[],
): { order: Covariance; page: Covariance } {
  const order = { aa: shared.a ** 2, ab: 0, bb: shared.b ** 2 };
  const page = { aa: 0, ab: 0, bb: 0 };
  causes.forEach((cause, i) => {
    const whole = cause.order ** 2 + cause.page ** 2;
    if (whole === 0) return;
    add(order, drift[i * 2], drift[i * 2 + 1], cause.order ** 2 / whole);
    add(page, drift[i * 2], drift[i * 2 + 1], cause.page ** 2 / whole);
  });
  return { order, page };
}

function add(to: Covariance, a: number, b: number, share: number) {
  to.aa += share * a * a;
  to.ab += share * a * b;
  to.bb += share * b * b;
}

/** Moves of a picture: the weighted mean of its zones', since one draw of drift is shared by all of them. */
export function meanMoves(zones: readonly { weight: number; moves: Moves }[]): Moves {
  const drift = new Float64Array(zones[0].moves.drift.length);
  const shared = { a: 0, b: 0 };
  for (const { weight, moves } of zones) {
    for (let i = 0; i < drift.length; i++) drift[i] += weight * moves.drift[i];
    shared.a += weight * moves.shared.a;
    shared.b += weight * moves.shared.b;
  }
  return { drift, shared };
}

export const distribution = (
  mean: AB,
  { order, page }: { order: Covariance; page: Covariance },
): TintDistribution => ({
  mean,
  aa: order.aa + page.aa,
  ab: order.ab + page.ab,
  bb: order.bb + page.bb,
});

/** Correlation of a* and b*; 0 where nothing scatters. */
export function correlation(order: Covariance, page: Covariance): number {
  const whole = Math.sqrt((order.aa + page.aa) * (order.bb + page.bb));
  return whole > 0 ? (order.ab + page.ab) / whole : 0;
}

/** Standard deviations along a* and b*. */
export const deviations = ({ aa, bb }: Covariance): AB => ({ a: Math.sqrt(aa), b: Math.sqrt(bb) });

import type { AB, Spread } from '../shared/forecast';
import type { Drift } from './model';
import type { TintDistribution } from './tint';

/** Covariance of a*, b*. */
export interface Covariance {
  aa: number;
  ab: number;
  bb: number;
}

/** Over print houses and what is not known of them, over the orders of one house, over the pages of one order. */
export type Scatter = Record<Level, Covariance>;

const LEVELS = ['house', 'order', 'page'] as const;
export type Level = (typeof LEVELS)[number];

/** What moves a tint. */
export interface Moves {
  /** By one SD (all levels together) of each cause of drift: a, b, a, b, ... */
  drift: Float64Array;
  /** Spread that is no drift, one SD: differs between houses, or is not known. */
  shared: AB;
}

/** One standard deviation of a cause, all levels together. */
export const deviationOf = ({ house, order, page }: Drift): number => Math.hypot(house, order, page);

/** Covariances of the levels: J Sigma J^T, each with its own share of the causes. */
export function covariances({ drift, shared }: Moves, causes: readonly Drift[]): Scatter {
  const scatter: Scatter = {
    house: { aa: shared.a ** 2, ab: 0, bb: shared.b ** 2 },
    order: { aa: 0, ab: 0, bb: 0 },
    page: { aa: 0, ab: 0, bb: 0 },
  };
  causes.forEach((cause, i) => {
    const whole = deviationOf(cause) ** 2;
    if (whole === 0) return;
    for (const level of LEVELS)
      add(scatter[level], drift[i * 2], drift[i * 2 + 1], cause[level] ** 2 / whole);
  });
  return scatter;
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

/** All levels together. */
export const whole = ({ house, order, page }: Scatter): Covariance => ({
  aa: house.aa + order.aa + page.aa,
  ab: house.ab + order.ab + page.ab,
  bb: house.bb + order.bb + page.bb,
});

export const distribution = (mean: AB, scatter: Scatter): TintDistribution => ({ mean, ...whole(scatter) });

/** Mean of several scatters, level by level; weights that add up to 1. */
export function meanScatter(parts: readonly { weight: number; scatter: Scatter }[]): Scatter {
  const mean: Scatter = {
    house: { aa: 0, ab: 0, bb: 0 },
    order: { aa: 0, ab: 0, bb: 0 },
    page: { aa: 0, ab: 0, bb: 0 },
  };
  for (const { weight, scatter } of parts)
    for (const level of LEVELS) {
      const { aa, ab, bb } = scatter[level];
      mean[level].aa += weight * aa;
      mean[level].ab += weight * ab;
      mean[level].bb += weight * bb;
    }
  return mean;
}

/** Standard deviations along a* and b*, level by level, and the correlation of the two over all (0 where nothing scatters). */
export function spreadOf(scatter: Scatter): Spread {
  const { aa, ab, bb } = whole(scatter);
  const both = Math.sqrt(aa * bb);
  return {
    house: deviations(scatter.house),
    order: deviations(scatter.order),
    page: deviations(scatter.page),
    corr: both > 0 ? ab / both : 0,
  };
}

/** Standard deviations along a* and b*. */
export const deviations = ({ aa, bb }: Covariance): AB => ({ a: Math.sqrt(aa), b: Math.sqrt(bb) });

/** One standard deviation along a* and b*, all levels together. */
export const wholeSpread = ({ house, order, page }: Omit<Spread, 'corr'>): AB => ({
  a: Math.hypot(house.a, order.a, page.a),
  b: Math.hypot(house.b, order.b, page.b),
});

import type { AB, Forecast, Spread } from '../shared/forecast';
import { withinDisc } from './tint';

/** How differently two pictures print side by side in one order, at the lightnesses that both hold. */
export interface Apart {
  /** Mean tint of the one minus that of the other at the same lightness: what their files cause. */
  difference: AB;
  /** Mean length of that difference. */
  size: number;
  /** Probability (0-1) that the two are `limit` or more apart, with what the printer adds from page to page. */
  probability: number;
  /** The same of two equal files: the printer's own scatter alone. */
  byPrinter: number;
}

/** Tint by the file's lightness, with how much it moves from house to house, order to order and page to page. */
export interface Tints {
  zones: { L: number; weight: number; a: number; b: number }[];
  spread: Omit<Spread, 'corr'>;
}

/** Tint of each zone of a forecast, from dark to light. */
export const tintsOf = ({ zones, spread }: Forecast): Tints => ({
  zones: zones
    .map(({ L, weight, a, b, aimA, aimB }) => ({ L, weight, a: a - aimA, b: b - aimB }))
    .sort((x, y) => x.L - y.L),
  spread: { house: spread.house, order: spread.order, page: spread.page },
});

/**
 * Distance in a*, b* from which two greys side by side are seen as two: changes between facing pages are seen from about
 * 1.5 to 2 (from memory).
 */
export const SEEN_APART = 2;

/** Less of a picture than this (share of the area) says nothing of the rest. Own choice. */
const LEAST_SHARE = 0.05;
/** Differences this much smaller than the limit are no matter of probability. Own choice. */
const FAR_BELOW = 0.25;

/**
 * Two pictures in one order on one target. What a process makes of a lightness is the same for both and falls out; what
 * is left comes from their files. One house prints both, and one draw of drift moves all pages of an order: two that
 * follow them alike stay together, so of the spread over houses and orders only its difference counts (own
 * simplification: the two move the same way), of the pages' own scatter both. Null where the pictures have no lightness in common.
 */
export function apart(one: Tints, other: Tints, limit: number): Apart | null {
  const steps = [...shared(one, other, 1), ...shared(other, one, -1)];
  const total = steps.reduce((sum, { weight }) => sum + weight, 0);
  if (total < LEAST_SHARE) return null;
  const mean = (value: (step: Step) => number) =>
    steps.reduce((sum, step) => sum + (step.weight / total) * value(step), 0);
  const page = {
    aa: one.spread.page.a ** 2 + other.spread.page.a ** 2,
    bb: one.spread.page.b ** 2 + other.spread.page.b ** 2,
  };
  const apartIn = (level: 'house' | 'order', axis: keyof AB) =>
    (one.spread[level][axis] - other.spread[level][axis]) ** 2;
  const aa = page.aa + apartIn('house', 'a') + apartIn('order', 'a');
  const bb = page.bb + apartIn('house', 'b') + apartIn('order', 'b');
  const beyond = (difference: AB, aa: number, bb: number) =>
    1 - withinDisc({ mean: difference, aa, ab: 0, bb }, limit);
  const byPrinter = beyond({ a: 0, b: 0 }, page.aa, page.bb);
  const size = mean(({ difference: { a, b } }) => Math.hypot(a, b));
  // most pictures of a book are alike, and there are many of them
  const same = size < limit * FAR_BELOW && Math.sqrt(Math.max(aa, bb)) < limit * FAR_BELOW;
  return {
    difference: { a: mean(step => step.difference.a), b: mean(step => step.difference.b) },
    size,
    probability: same
      ? byPrinter
      : Math.min(
          1,
          mean(step => beyond(step.difference, aa, bb)),
        ),
    byPrinter,
  };
}

interface Step {
  weight: number;
  difference: AB;
}

/** At the lightnesses of `one` that lie among those of `other`; `sign` -1 turns the difference round. */
function shared(one: Tints, other: Tints, sign: 1 | -1): Step[] {
  return one.zones.flatMap(({ L, weight, a, b }) => {
    const at = tintAt(other, L);
    return at ? [{ weight: weight / 2, difference: { a: sign * (a - at.a), b: sign * (b - at.b) } }] : [];
  });
}

/** Tint at a lightness of the file, on straight lines between zones; null where the picture has none so dark or light. */
export function tintAt({ zones }: Tints, L: number): AB | null {
  const above = zones.findIndex(zone => zone.L >= L);
  if (above === -1) return null;
  if (zones[above].L === L) return { a: zones[above].a, b: zones[above].b };
  if (above === 0) return null;
  const [from, to] = [zones[above - 1], zones[above]];
  const t = (L - from.L) / (to.L - from.L);
  return { a: from.a + t * (to.a - from.a), b: from.b + t * (to.b - from.b) };
}

/** Lightnesses at which the middle of a set is taken. */
const GRID = Array.from({ length: 19 }, (_, i) => 5 + i * 5);

/**
 * What most of several pictures print as: the median tint at each lightness that at least half of them hold, and the
 * median spread. Null of none.
 */
export function middleOf(all: readonly Tints[]): Tints | null {
  if (!all.length) return null;
  const zones = GRID.flatMap(L => {
    const at = all.flatMap(tints => tintAt(tints, L) ?? []);
    if (at.length * 2 < all.length) return [];
    return [{ L, weight: 1, a: median(at.map(({ a }) => a)), b: median(at.map(({ b }) => b)) }];
  });
  const weight = 1 / Math.max(1, zones.length);
  const spread = (which: 'house' | 'order' | 'page'): AB => ({
    a: median(all.map(tints => tints.spread[which].a)),
    b: median(all.map(tints => tints.spread[which].b)),
  });
  return {
    zones: zones.map(zone => ({ ...zone, weight })),
    spread: { house: spread('house'), order: spread('order'), page: spread('page') },
  };
}

function median(values: readonly number[]): number {
  const sorted = values.toSorted((x, y) => x - y);
  const middle = sorted.length >> 1;
  return sorted.length % 2 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

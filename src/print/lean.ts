import type { Direction, Forecast, RouteForecast } from '../shared/forecast';
import { directionOfHue, hueOf, probabilityTowards } from './bands';
import type { TintDistribution } from './tint';

/**
 * Which way several pictures lean as one set, each counting the same: named as it is of one picture, by the hue of their
 * mean tint, if in more than half of all their prints the tint is 1 or more (dCh) within 45 degrees of it. Null where
 * that cannot be foretold, and for no pictures.
 */
export function leanOf(forecasts: readonly Forecast[]): Direction | null {
  const ways = forecasts.flatMap(waysOf);
  const total = ways.reduce((sum, { weight }) => sum + weight, 0);
  if (total === 0) return null;
  const mean = (value: (tint: TintDistribution) => number) =>
    ways.reduce((sum, { weight, tint }) => sum + (weight / total) * value(tint), 0);
  const hue = hueOf(
    mean(tint => tint.mean.a),
    mean(tint => tint.mean.b),
  );
  return mean(tint => probabilityTowards(tint, hue)) > 0.5 ? directionOfHue(hue) : null;
}

/** The tints of a picture by the ways that it may take; its weights add up to 1. */
function waysOf({ tint, spread, routes }: Forecast): { weight: number; tint: TintDistribution }[] {
  const ways: readonly Pick<RouteForecast, 'weight' | 'tint' | 'spread'>[] = routes ?? [
    { weight: 1, tint, spread },
  ];
  const total = ways.reduce((sum, { weight }) => sum + weight, 0);
  return ways.map(way => ({ weight: way.weight / total, tint: distributionOf(way) }));
}

function distributionOf({ tint, spread }: Pick<RouteForecast, 'tint' | 'spread'>): TintDistribution {
  const { order, page, corr } = spread;
  const aa = order.a ** 2 + page.a ** 2;
  const bb = order.b ** 2 + page.b ** 2;
  return { mean: { a: tint.a, b: tint.b }, aa, ab: corr * Math.sqrt(aa * bb), bb };
}

import type { Direction, Forecast, RouteForecast } from '../shared/forecast';
import { besides, directionOfHue, hueOf, probabilityOf, probabilityTowards } from './bands';
import { wholeSpread } from './scatter';
import type { TintDistribution } from './tint';

/** Which way prints lean. */
export interface Lean {
  /** By the hue of the mean tint, as a forecast's own `direction`. */
  direction: Direction;
  /** The name beside it, where many prints would be called by that one: the hue lies near the boundary. */
  also: Direction | null;
  /** Probability of a tint of 1 and more (dCh) whose hue has that name, or one of the two. */
  probability: number;
}

/** From this probability on a second name belongs to what is said: two orders of ten. Own choice. */
const ALSO = 0.2;

/**
 * Which way several pictures lean as one set, each counting the same: named as it is of one picture, by the hue of their
 * mean tint, if in more than half of all their prints the tint is 1 or more (dCh) within 45 degrees of it. Null where
 * that cannot be foretold, and for no pictures.
 */
export function leanOf(forecasts: readonly Forecast[]): Lean | null {
  const ways = forecasts.flatMap(waysOf);
  const total = ways.reduce((sum, { weight }) => sum + weight, 0);
  if (total === 0) return null;
  const mean = (value: (tint: TintDistribution) => number) =>
    ways.reduce((sum, { weight, tint }) => sum + (weight / total) * value(tint), 0);
  const hue = hueOf(
    mean(tint => tint.mean.a),
    mean(tint => tint.mean.b),
  );
  if (mean(tint => probabilityTowards(tint, hue)) <= 0.5) return null;
  const direction = directionOfHue(hue);
  const probabilities = (name: Direction) => mean(tint => probabilityOf(tint, name));
  const beside = besides(direction).map(name => ({ name, probability: probabilities(name) }));
  const [second] = beside.sort((x, y) => y.probability - x.probability);
  const own = probabilities(direction);
  return second.probability >= ALSO
    ? { direction, also: second.name, probability: own + second.probability }
    : { direction, also: null, probability: own };
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
  const { a, b } = wholeSpread(spread);
  return { mean: { a: tint.a, b: tint.b }, aa: a * a, ab: spread.corr * a * b, bb: b * b };
}

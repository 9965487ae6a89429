import type { AB } from '../../shared/forecast';

/** Decimal places of every number in a report: far more than is known, few enough to be the same everywhere. */
export const DECIMALS = 6;

const SCALE = 10 ** DECIMALS;

/** The nearest number with so few decimals; never -0. */
export const round = (value: number): number => Math.round(value * SCALE) / SCALE + 0;

export const roundAB = ({ a, b }: AB): AB => ({ a: round(a), b: round(b) });

/** The sum of rounded points: parts that are printed add up to the whole that is printed. */
export const sum = (...points: AB[]): AB =>
  roundAB({ a: points.reduce((s, p) => s + p.a, 0), b: points.reduce((s, p) => s + p.b, 0) });

/** Any value with its numbers rounded and its keys in alphabetical order, for what rules hand over. */
export function canonical(value: unknown): unknown {
  if (typeof value === 'number') return Number.isFinite(value) ? round(value) : null;
  if (Array.isArray(value)) return value.map(canonical);
  if (value === null || typeof value !== 'object') return value;
  const entries = Object.entries(value).filter(([, inner]) => inner !== undefined);
  return Object.fromEntries(
    entries.sort(([x], [y]) => (x < y ? -1 : 1)).map(([key, inner]) => [key, canonical(inner)]),
  );
}

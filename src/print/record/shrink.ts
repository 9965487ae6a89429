import type { AB } from '../../shared/forecast';

/** One axis of a tint: its mean over the orders of a house, and the variance of what is not known of that mean. */
export interface Expectation {
  mean: number;
  variance: number;
}

/** Readings are no better than this, CIELAB (one instrument against another: 0.3 to 1). */
const LEAST_SD = 0.25;

/**
 * Shrinkage: the mean of `n` orders against the generic prior of one house's mean,
 * mu = (mu0 / s0^2 + n r / s^2) / (1 / s0^2 + n / s^2). The next order scatters around it by s^2 (`order`) and by what is
 * still unknown of the mean (`variance`).
 */
export function shrink(
  prior: Expectation,
  read: { mean: number; n: number; variance: number },
): Expectation & { order: number } {
  const between = Math.max(read.variance, LEAST_SD ** 2);
  // where the generic forecast scatters not at all (bare paper) a reading still counts
  const house = Math.max(prior.variance, LEAST_SD ** 2);
  const precision = 1 / house + read.n / between;
  return {
    mean: (prior.mean / house + (read.n * read.mean) / between) / precision,
    variance: 1 / precision,
    order: between,
  };
}

/** Tint by print lightness between the greys that were read; beyond them the nearest. */
export function tintAt(greys: readonly { L: number; a: number; b: number }[], L: number): AB {
  const sorted = [...greys].sort((x, y) => x.L - y.L);
  const next = sorted.findIndex(grey => grey.L >= L);
  if (next === 0) return sorted[0];
  if (next < 0) return sorted[sorted.length - 1];
  const [dark, light] = [sorted[next - 1], sorted[next]];
  const t = (L - dark.L) / (light.L - dark.L);
  return { a: dark.a + t * (light.a - dark.a), b: dark.b + t * (light.b - dark.b) };
}

import type { AB } from '../shared/forecast';
import { gaussLegendre, normalCdf } from './normal';

/** Normal distribution in the a*b* plane. */
export interface TintDistribution {
  mean: AB;
  /** Variances and covariance of a*, b*. */
  aa: number;
  ab: number;
  bb: number;
}

const SIX = gaussLegendre(6);
const EIGHT = gaussLegendre(8);
const SIXTEEN = gaussLegendre(16);
/** How many nodes a side a disc needs, by its radius in narrow standard deviations, for an error below 2e-4. */
const ruleFor = (ratio: number) => (ratio < 1 ? SIX : ratio < 10 ? EIGHT : SIXTEEN);

/** Standard deviations below this (CIELAB units) are as good as none. */
const LEAST_SD = 1e-4;
/** Beyond so many standard deviations nothing that counts is left (1.5e-4 of the plane, 3e-5 of a line). */
const ENOUGH = 4.2;
/** How far to either side a sector is looked at, in wide standard deviations. */
const REACH = 5;

/** Probability that the tint lies within `radius` of neutral; `withinDiscs` for one. */
export const withinDisc = (tint: TintDistribution, radius: number): number => withinDiscs(tint, [radius])[0];

/**
 * Probabilities that the tint lies within each radius of neutral. The distribution is turned to its own axes; the
 * narrower axis is integrated numerically (Gauss-Legendre on each side of the mean, angle substituted so that the
 * disc's edge is smooth), the wider in closed form. Absolute error below 2e-4.
 */
export function withinDiscs(tint: TintDistribution, radii: readonly number[]): number[] {
  const { narrow, wide, x, y } = ownAxes(tint);
  const away = Math.hypot(x, y);
  return radii.map(radius => {
    if (away + ENOUGH * wide < radius) return 1;
    if (away - ENOUGH * wide > radius) return 0;
    return disc(x, y, narrow, wide, radius);
  });
}

function disc(x: number, y: number, narrow: number, wide: number, radius: number): number {
  const from = Math.max(-radius, x - ENOUGH * narrow);
  const to = Math.min(radius, x + ENOUGH * narrow);
  if (from >= to) return 0;
  const rule = ruleFor(radius / narrow);
  const start = Math.asin(from / radius);
  const end = Math.asin(to / radius);
  const middle = Math.asin(Math.min(to, Math.max(from, x)) / radius);
  let sum = 0;
  for (let side = 0; side < 2; side++) {
    const low = side === 0 ? start : middle;
    const half = ((side === 0 ? middle : end) - low) / 2;
    if (half <= 0) continue;
    for (let i = 0; i < rule.x.length; i++) {
      const sine = Math.sin(low + half * (1 + rule.x[i]));
      const u = (radius * sine - x) / narrow;
      const edge = radius * Math.sqrt(1 - sine * sine);
      const chord = normalCdf((edge - y) / wide) - normalCdf((-edge - y) / wide);
      sum += half * rule.w[i] * edge * Math.exp(-0.5 * u * u) * chord;
    }
  }
  return Math.min(1, Math.max(0, sum / (narrow * Math.sqrt(2 * Math.PI))));
}

/** Probability that the tint is at least `radius` away from neutral and its hue within 45 degrees of `hue` (radians). */
export const towards = (tint: TintDistribution, hue: number, radius: number): number =>
  inSector(tint, hue, Math.PI / 4, radius);

/**
 * Probability that the tint is at least `radius` away from neutral and its hue within `half` (radians) of `hue`.
 * Rays from neutral: along each the integral is closed, over the angle it is 16-point Gauss-Legendre in panels.
 * Absolute error below 1e-4 (3e-4 where the wide axis is over ten times the narrow).
 */
export function inSector(tint: TintDistribution, hue: number, half: number, radius: number): number {
  const least = LEAST_SD * LEAST_SD;
  const aa = tint.aa + least;
  const bb = tint.bb + least;
  const det = aa * bb - tint.ab * tint.ab;
  const { a, b } = tint.mean;
  /** x' S^-1 y */
  const form = (xa: number, xb: number, ya: number, yb: number) =>
    (bb * xa * ya - tint.ab * (xa * yb + xb * ya) + aa * xb * yb) / det;
  const C = form(a, b, a, b);
  // A narrow distribution far from neutral fills a thin sector only: integrate no wider than that.
  const length = Math.hypot(a, b);
  const extent = REACH * Math.sqrt(Math.max(aa, bb));
  const reach = extent < length ? Math.asin(extent / length) : 2 * Math.PI;
  const offset = turn(Math.atan2(b, a) - hue);
  const from = hue + Math.max(-half, offset - reach);
  const to = hue + Math.min(half, offset + reach);
  if (from >= to) return 0;
  // a distribution that is nearly a line needs more
  const panels = 100 * det > (aa + bb) ** 2 ? 4 : 8;
  const panel = (to - from) / (2 * panels);
  let sum = 0;
  for (let k = 0; k < panels; k++)
    for (let i = 0; i < SIXTEEN.x.length; i++) {
      const angle = from + panel * (2 * k + 1 + SIXTEEN.x[i]);
      const ca = Math.cos(angle);
      const sa = Math.sin(angle);
      sum += SIXTEEN.w[i] * panel * ray(form(ca, sa, ca, sa), form(ca, sa, a, b), C, radius);
    }
  return Math.min(1, sum / (2 * Math.PI * Math.sqrt(det)));
}

/** Angle brought into -pi to pi. */
const turn = (angle: number) => Math.atan2(Math.sin(angle), Math.cos(angle));

/** Integral from `from` on of r exp(-(A r^2 - 2 B r + C) / 2). */
function ray(A: number, B: number, C: number, from: number): number {
  const centre = B / A;
  const root = Math.sqrt(A);
  const peak = Math.exp(-0.5 * (C - B * centre));
  const u = (from - centre) * root;
  return peak * (Math.exp(-0.5 * u * u) / A + (centre / root) * Math.sqrt(2 * Math.PI) * normalCdf(-u));
}

function ownAxes({ mean, aa, ab, bb }: TintDistribution) {
  const angle = 0.5 * Math.atan2(2 * ab, aa - bb);
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const along = aa * c * c + 2 * ab * c * s + bb * s * s;
  const across = aa * s * s - 2 * ab * c * s + bb * c * c;
  const u = mean.a * c + mean.b * s;
  const v = mean.b * c - mean.a * s;
  const sd = (variance: number) => Math.max(LEAST_SD, Math.sqrt(Math.max(0, variance)));
  return along >= across
    ? { wide: sd(along), narrow: sd(across), y: u, x: v }
    : { wide: sd(across), narrow: sd(along), y: v, x: u };
}

import type { Bands, Direction } from '../shared/forecast';
import { inSector, type TintDistribution, towards, withinDiscs } from './tint';

/**
 * Limits of dCh between neutral, faint, visible, obvious and heavy. Own choice: about 1 is seen side by side only,
 * 2.5 in printed pictures on average (Song and Luo, CIC9 2001, quoted), adaptation to a page hides 2 to 4.
 */
export const LIMITS = [1, 2, 4, 7] as const;

/** Probability of each band. They add up to 1. */
export function bandsOf(tint: TintDistribution): Bands {
  const [p1, p2, p4, p7] = withinDiscs(tint, LIMITS);
  return {
    neutral: p1,
    faint: Math.max(0, p2 - p1),
    visible: Math.max(0, p4 - p2),
    obvious: Math.max(0, p7 - p4),
    heavy: Math.max(0, 1 - Math.max(p1, p2, p4, p7)),
  };
}

/** Mean of several bands by weight (any positive scale). */
export function meanBands(parts: readonly { weight: number; bands: Bands }[]): Bands {
  const total = parts.reduce((sum, part) => sum + part.weight, 0);
  const mean = (band: keyof Bands) =>
    parts.reduce((sum, part) => sum + part.weight * part.bands[band], 0) / total;
  return {
    neutral: mean('neutral'),
    faint: mean('faint'),
    visible: mean('visible'),
    obvious: mean('obvious'),
    heavy: mean('heavy'),
  };
}

/** Share of a tint that is seen without a neutral beside it (dCh 2 and more), and of an obvious one (4 and more). */
export const visibleShare = (bands: Bands): number => bands.visible + bands.obvious + bands.heavy;
export const obviousShare = (bands: Bands): number => bands.obvious + bands.heavy;

export const hueOf = (a: number, b: number): number => ((Math.atan2(b, a) * 180) / Math.PI + 360) % 360;

/** Where the hues of a name begin, in degrees, all round. */
const NAMES: readonly { from: number; direction: Direction }[] = [
  { from: 20, direction: 'warm' },
  { from: 110, direction: 'greenish' },
  { from: 215, direction: 'bluish' },
  { from: 300, direction: 'pinkish' },
];

/** Name of a hue angle in degrees. */
export const directionOfHue = (hue: number): Direction =>
  (NAMES.findLast(({ from }) => hue >= from) ?? NAMES[NAMES.length - 1]).direction;

/** The names on both sides of one. */
export function besides(direction: Direction): [Direction, Direction] {
  const i = NAMES.findIndex(name => name.direction === direction);
  const n = NAMES.length;
  return [NAMES[(i + n - 1) % n].direction, NAMES[(i + 1) % n].direction];
}

/** Probability of dCh >= 1 with a hue of this name. */
export function probabilityOf(tint: TintDistribution, direction: Direction): number {
  const i = NAMES.findIndex(name => name.direction === direction);
  const { from } = NAMES[i];
  const to = NAMES[(i + 1) % NAMES.length].from;
  const half = ((to - from + 360) % 360) / 2;
  return inSector(tint, ((from + half) * Math.PI) / 180, (half * Math.PI) / 180, LIMITS[0]);
}

/** Probability of dCh >= 1 within 45 degrees of a hue in degrees. */
export const probabilityTowards = (tint: TintDistribution, hue: number): number =>
  towards(tint, (hue * Math.PI) / 180, LIMITS[0]);

import type { Forecast } from '../shared/forecast';
import { LOST } from './range';

/** Steps of the file's L* in which the place is looked for: a quarter is told apart by no eye. */
const STEP = 0.25;

/**
 * L* of the file below which everything prints like the print's black: the shadow that can be printed. By the same
 * straight lines between a picture's zones, and on beyond them, as the forecast counts what is lost. 0: nothing does.
 */
export function closedBelow({ zones, range: { black } }: Pick<Forecast, 'zones' | 'range'>): number {
  const points = zones.map(({ L, Lprint }) => ({ L, Lprint })).sort((x, y) => x.L - y.L);
  let L = 0;
  while (L < 100 && printedAt(points, L) < black + LOST) L += STEP;
  return L;
}

function printedAt(points: readonly { L: number; Lprint: number }[], L: number): number {
  let i = 0;
  while (i < points.length - 2 && points[i + 1].L < L) i++;
  const from = points[i];
  const to = points[Math.min(i + 1, points.length - 1)];
  if (to.L === from.L) return from.Lprint;
  return from.Lprint + ((L - from.L) / (to.L - from.L)) * (to.Lprint - from.Lprint);
}

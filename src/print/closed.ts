import type { Forecast } from '../shared/forecast';
import { LOST, toneCurve } from './range';

/** Steps of the file's L* in which the place is looked for: a quarter is told apart by no eye. */
const STEP = 0.25;

/**
 * L* of the file below which everything prints like the print's black: the shadow that can be printed. By the same
 * straight lines between a picture's zones, and on beyond them, as the forecast counts what is lost. 0: nothing does.
 */
export function closedBelow({ zones, range: { black } }: Pick<Forecast, 'zones' | 'range'>): number {
  const printedAt = toneCurve(zones);
  let L = 0;
  while (L < 100 && printedAt(L) < black + LOST) L += STEP;
  return L;
}

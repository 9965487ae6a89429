import { type Draw, drawsOf } from './draws';

/** So many samples a series may choose from. Eleven were enough for each of 7728 forecasts of the demo book's pictures. */
const SAMPLES = 64;

/**
 * `n` possible orders that show a tint as often as the forecast says: the first of the series' samples whose count is
 * the nearest whole number to `expected`, which most are; if none is, the one that comes nearest. The same series takes
 * the same samples for every picture, so that pictures alike are shown in the same orders.
 */
export function sampleOf(
  series: number,
  n: number,
  expected: number,
  count: (draws: readonly Draw[]) => number,
): Draw[] {
  let best: Draw[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < SAMPLES && least > 0.5; i++) {
    const draws = drawsOf(series * SAMPLES + i, n);
    const off = Math.abs(count(draws) - expected);
    if (off < least) [best, least] = [draws, off];
  }
  return best;
}

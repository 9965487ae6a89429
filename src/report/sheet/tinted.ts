import { LIMITS } from '../../print/bands';
import { visibility } from '../../print/visibility';
import type { Forecast } from '../../shared/forecast';
import type { PrintedGrey } from './tones';

/** Length of a tint in a*, b* from which it is seen by itself: the limit of the band that is called visible. */
const [, VISIBLE] = LIMITS;

/** A possible order: how any lightness of the file prints in it. */
type Print = (L: number) => PrintedGrey;

/**
 * In which of these orders a tint is seen. A forecast counts orders by the share of the picture that they tint (its
 * zones weighed as in the forecast: deep shadows count little), so two that tint half of it are one. As many orders are
 * tinted as the shares add up to, those with the largest share first, then those with the strongest tint.
 */
export function tintedOf({ zones }: Forecast, prints: readonly Print[]): boolean[] {
  const weights = zones.map(({ weight, Lprint }) => weight * visibility(Lprint));
  const total = sum(weights);
  const seen = prints.map((print, order) => {
    const tints = zones.map(({ L }) => lengthOf(print(L)));
    return {
      order,
      share: sum(weights.filter((_, zone) => tints[zone] >= VISIBLE)) / total,
      mean: sum(weights.map((weight, zone) => weight * tints[zone])),
    };
  });
  const ranked = [...seen].sort((x, y) => y.share - x.share || y.mean - x.mean);
  const tinted = new Set(
    ranked.slice(0, Math.round(sum(seen.map(({ share }) => share)))).map(({ order }) => order),
  );
  return prints.map((_, order) => tinted.has(order));
}

const lengthOf = ({ a, b }: PrintedGrey) => Math.hypot(a, b);

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

import { LIMITS } from '../../print/bands';
import { NOTICEABLE } from '../../print/seen';
import { visibility } from '../../print/visibility';
import type { Forecast } from '../../shared/forecast';
import type { PrintedGrey } from './tones';

/** Length of a tint in a*, b* from which it is seen by itself: the limit of the band that is called visible. */
const [, VISIBLE] = LIMITS;

/** A possible order: how any lightness of the file prints in it. */
type Print = (L: number) => PrintedGrey;

/** In which of these orders a tint is seen: on a noticeable part of the picture, as the forecast counts them. */
export function tintedOf({ zones }: Forecast, prints: readonly Print[]): boolean[] {
  const weights = zones.map(({ weight, Lprint }) => weight * visibility(Lprint));
  const total = sum(weights);
  return prints.map(print => {
    const tinted = weights.filter((_, zone) => lengthOf(print(zones[zone].L)) >= VISIBLE);
    return sum(tinted) / total >= NOTICEABLE;
  });
}

const lengthOf = ({ a, b }: PrintedGrey) => Math.hypot(a, b);

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0);

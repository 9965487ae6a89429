import { isFlatter } from '../print/choice';
import type { BookPicture } from '../shared/finding';
import type { Forecast } from '../shared/forecast';
import type { Encoding } from '../shared/picture';
import type { Target } from '../shared/target';
import { grouped } from './groups';
import { forecastOf, kindOf, type Recommend } from './recommended';
import { forecastsOf, forTarget, isPhotographic } from './targets';

/** L* of a black by the likeliest way of the print house, by the one with the deepest, and by that with the weakest; whether it was read there. */
type Black = Pick<Forecast['range'], 'black' | 'blackDeepest' | 'blackWeakest' | 'blackRead'>;

/** The black of a picture as it is stored, and as it is recommended. */
export interface Blacks {
  before: Black;
  after: Black;
}

/**
 * What an encoding costs on a target in range and smoothness, beside what it gains in evenness: ` The price of ...`, or
 * nothing. Told of those of the pictures that lose by it. `where`: the target's name in brackets, if it is needed.
 */
export function priceOf(encoding: Encoding, target: Target, blacks: readonly Blacks[], where = ''): string {
  const screen =
    encoding === 'black-only' && !isPhotographic(target)
      ? 'sharp eyes see the screen of a grey of one ink'
      : '';
  const costs = [flatter(blacks), screen].filter(Boolean).join(', and ');
  return costs && ` The price of ${encoding}${where}: ${costs}.`;
}

/** The prices of saving greys of one part as recommended, on each of their targets. Toned pictures have none to tell. */
export function pricesOf(
  pictures: readonly BookPicture[],
  recommend: Recommend,
  targets: readonly Target[],
): string {
  const prints = pictures
    .filter(({ intent }) => intent === 'grey')
    .flatMap(picture => forecastsOf(picture).map(print => ({ picture, ...print })));
  return grouped(prints, ({ target }) => target.name)
    .map(onTarget => {
      const [{ picture, target }] = onTarget;
      const recommendation = recommend(picture, target);
      // the black of a sound conversion is the same for all of them
      const converted = recommendation && forecastOf(recommendation, picture, target);
      if (!converted) return '';
      const blacks = onTarget
        .filter(print => kindOf(print.picture) !== recommendation.encoding)
        .map(({ forecast }) => ({ before: forecast.range, after: converted.range }));
      return blacks.length
        ? priceOf(recommendation.encoding, target, blacks, forTarget(target, targets))
        : '';
    })
    .join('');
}

function flatter(blacks: readonly Blacks[]): string {
  const lost = blacks.filter(isLost);
  if (!lost.length) return '';
  const before = span(lost.map(black => black.before));
  const afters = lost.map(black => black.after);
  const after = span(afters);
  if (afters.every(isSure)) {
    const guess = lost.every(black => isSure(black.before)) ? '' : `, ${BY_HOUSE}`;
    return `black prints as L* ${after} instead of ${before}${guess}`;
  }
  const likeliest = words(afters.map(({ black }) => black));
  return `black may print as L* ${likeliest} (${after}, ${BY_HOUSE}) instead of ${before}`;
}

const BY_HOUSE = 'by how the house prints it';

/** A black that was read and one that is the process's in general are no price of each other. */
const isLost = ({ before, after }: Blacks): boolean =>
  after.blackRead === before.blackRead && isFlatter(after, before);

const isSure = ({ blackDeepest, blackWeakest }: Black): boolean =>
  Math.round(blackDeepest) === Math.round(blackWeakest);

/** Over all pictures and ways. */
const span = (blacks: readonly Black[]): string =>
  words(blacks.flatMap(({ blackDeepest, blackWeakest }) => [blackDeepest, blackWeakest]));

/** `11`, or `10 to 12`: whole numbers. */
function words(values: readonly number[]): string {
  const [least, most] = [Math.min(...values), Math.max(...values)].map(Math.round);
  return least === most ? `${least}` : `${least} to ${most}`;
}

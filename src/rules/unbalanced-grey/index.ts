import { leanOf } from '../../print/lean';
import type { BookPicture } from '../../shared/finding';
import type { Forecast } from '../../shared/forecast';
import type { Target } from '../../shared/target';
import { grouped, oneByOne, paths } from '../groups';
import { asTaken, type Recommendation } from '../recommended';
import { defineRule, type Verdict } from '../rule';
import { say } from '../say';
import { forecastsOf, forTarget, guessOfInks, isPhotographic, processName } from '../targets';
import { count, inOrdersOfMany, leaning, list } from '../words';
import page from './README.md';

interface Options {
  limit: number;
}

const messages = {
  unbalanced:
    'By the forecast this picture prints with a cast{lean} {now} on {process}{target}: its inks are out of balance there by about {size} in a*, b* (from 2 on a tint is seen). {way}.{guess}',
  many: 'By the forecast {pictures} print with a cast{lean} {now} on {process}{target} ({names}): their inks are out of balance there by about {size} in a*, b* (from 2 on a tint is seen). {way}.{guess}',
} as const;

export default defineRule<Options>({
  id: 'unbalanced-grey',
  description: 'Inks that do not make grey on the target, such as equal cyan, magenta and yellow.',
  severity: 'warning',
  scope: 'both',
  needs: 'forecast',
  intents: ['grey'],
  options: {
    type: 'object',
    additionalProperties: false,
    properties: {
      limit: {
        type: 'number',
        minimum: 0.5,
        default: 2,
        description:
          'Distance from the grey of black ink alone, in a*, b*, from which the inks count as unbalanced.',
      },
    },
  },
  messages,
  page,
  *check({ pictures, targets, recommend, isWaived }, { limit }) {
    const casts = pictures
      .filter(({ facts }) => facts.encoding === 'four-channel' || facts.encoding === 'three-ink')
      .flatMap(picture =>
        forecastsOf(picture).map(({ target, forecast }): Cast => {
          const { a, b } = forecast.parts.encoding;
          const direction = forecast.tint.direction;
          const recommendation = recommend(picture, target);
          return {
            ...{ picture, target, forecast, direction, recommendation, a, b },
            size: Math.hypot(a, b),
          };
        }),
      )
      .filter(({ size }) => size >= limit);
    const alike = grouped(casts, ({ picture, target, direction, forecast, recommendation }) =>
      JSON.stringify([target.name, direction, recommendation, guessOfInks(picture, forecast)]),
    );
    for (const group of alike)
      yield* oneByOne(group, {
        ...{ one: cast => forOne(cast, targets), all: casts => forAll(casts, targets) },
        isWaived,
      });
  },
});

/** What the inks of a picture make on a target beside grey. */
interface Cast {
  picture: BookPicture;
  target: Target;
  forecast: Forecast;
  /** Which way the whole print leans, where that can be foretold. */
  direction: Forecast['tint']['direction'];
  recommendation: Recommendation | null;
  a: number;
  b: number;
  /** Distance from the target's grey in a*, b*. */
  size: number;
}

/** Told of all of `casts`, with the odds that `likely-tint` tells. */
const words = (casts: readonly Cast[], targets: readonly Target[]) => ({
  lean: leaning(leanOf(casts.map(({ forecast }) => forecast))),
  now: inOrdersOfMany(casts.map(({ forecast }) => forecast.tint.seen)),
  ...condition(casts[0], targets),
});

const condition = ({ picture, target, forecast }: Cast, targets: readonly Target[]) => ({
  process: processName(target),
  target: forTarget(target, targets),
  guess: guessOfInks(picture, forecast),
});

const data = ({ target, forecast, direction, recommendation }: Cast) => ({
  target: target.name,
  basis: forecast.condition.basis,
  direction,
  ...(cannotBe(recommendation) && { save: asTaken(recommendation, target) }),
});

/** An encoding that cannot be out of balance. */
const cannotBe = (recommendation: Recommendation | null): recommendation is Recommendation =>
  recommendation !== null &&
  recommendation.encoding !== 'four-channel' &&
  recommendation.encoding !== 'three-ink';

function forOne(cast: Cast, targets: readonly Target[]): Verdict {
  const { picture, target, recommendation, a, b, size } = cast;
  return {
    picture,
    message: say(messages.unbalanced, {
      ...words([cast], targets),
      size: size.toFixed(1),
      way: wayOut(recommendation, target, 'it'),
    }),
    data: { ...data(cast), encodingPart: { a, b }, size },
  };
}

/** Told once of those that print with the same cast and have the same way out. */
function forAll(casts: readonly Cast[], targets: readonly Target[]): Verdict {
  const [first] = casts;
  const names = paths(casts.map(({ picture }) => picture));
  const sizes = casts.map(({ size }) => size);
  const [least, most] = [Math.min(...sizes), Math.max(...sizes)];
  return {
    message: say(messages.many, {
      ...words(casts, targets),
      pictures: count(names.length, 'picture'),
      names: list(names),
      size: range(least.toFixed(1), most.toFixed(1)),
      way: wayOut(first.recommendation, first.target, 'them'),
    }),
    data: { ...data(first), size: least, mostSize: most, pictures: names },
  };
}

const range = (least: string, most: string) => (least === most ? least : `${least} to ${most}`);

/** A photographic process takes no separation; one encoding is named by all rules, unless it is inks again. */
function wayOut(recommendation: Recommendation | null, target: Target, what: 'it' | 'them'): string {
  const again = isPhotographic(target)
    ? ''
    : `separate ${what} again for this process with a neutral grey axis`;
  const save = cannotBe(recommendation) ? `save ${what} as ${asTaken(recommendation, target)}` : '';
  const ways =
    [save, again].filter(Boolean).join(', or ') || `turn ${what} into grey again from the original`;
  return ways[0].toUpperCase() + ways.slice(1);
}

import type { BookPicture } from '../../shared/finding';
import type { AB, Forecast } from '../../shared/forecast';
import type { Target } from '../../shared/target';
import { grouped } from '../groups';
import { asTaken, kindOf, type Recommend, type Recommendation } from '../recommended';
import { defineRule, greyOrToned, type Verdict } from '../rule';
import { say } from '../say';
import { forecastsOf, forTarget, processName } from '../targets';
import page from './README.md';

interface Options {
  limit: number;
}

const messages = {
  book: 'Under {light} the greys of this book look about {size} away in a*, b* from what they are in daylight (D50), beside the same paper, by the forecast{target}. That much is the light, on top of what the print has in daylight: judge the test print under the light it will be seen in.',
  picture:
    'Under {light} this picture moves away from its neighbours by about {size} in a*, b* by the forecast, although they may match in daylight{target}: {process} makes its grey, as {encoding}, of other colourants than theirs. {way}',
} as const;

export default defineRule<Options>({
  id: 'light-shift',
  description: "Greys that change under the target's light, all alike or some of them.",
  severity: 'note',
  scope: 'both',
  needs: 'forecast',
  intents: greyOrToned,
  options: {
    type: 'object',
    additionalProperties: false,
    properties: {
      limit: {
        type: 'number',
        minimum: 0.5,
        default: 2,
        description: 'Change in a*, b* from daylight (D50), relative to the paper, from which it is told.',
      },
    },
  },
  messages,
  page,
  *check({ pictures, targets, recommend }, { limit }) {
    const prints = pictures.flatMap(picture => forecastsOf(picture).map(print => ({ picture, ...print })));
    for (const onTarget of grouped(prints, ({ target }) => target.name))
      yield* underLight(onTarget, limit, targets, recommend);
  },
});

interface Print {
  picture: BookPicture;
  target: Target;
  forecast: Forecast;
}

function* underLight(
  prints: Print[],
  limit: number,
  targets: readonly Target[],
  recommend: Recommend,
): Iterable<Verdict> {
  const { target } = prints[0];
  const usual = middle(prints.map(print => print.forecast.parts.light));
  const words = {
    light: target.light,
    process: processName(target),
    target: forTarget(target, targets),
  };
  const size = Math.hypot(usual.a, usual.b);
  if (size >= limit)
    yield {
      message: say(messages.book, { ...words, size: size.toFixed(1) }),
      data: { target: target.name, light: target.light, change: usual },
    };
  for (const { picture, forecast } of prints) {
    const { light } = forecast.parts;
    const apart = Math.hypot(light.a - usual.a, light.b - usual.b);
    if (apart < limit) continue;
    yield {
      picture,
      message: say(messages.picture, {
        ...words,
        size: apart.toFixed(1),
        encoding: picture.facts.encoding,
        way: wayOut(picture, recommend(picture, target), target),
      }),
      data: { target: target.name, light: target.light, change: light, usual },
    };
  }
}

function wayOut(picture: BookPicture, recommendation: Recommendation | null, target: Target): string {
  if (picture.intent !== 'grey' || !recommendation) return 'Save it in the encoding of its neighbours.';
  return kindOf(picture) === recommendation.encoding && !recommendation.unsure
    ? `Leave it, and save them as ${recommendation.encoding} too.`
    : `Save it as ${asTaken(recommendation, target)}.`;
}

/** Medians of both axes: what most pictures do, whatever a few others do. */
function middle(changes: AB[]): AB {
  const median = (values: number[]) => values.sort((x, y) => x - y)[values.length >> 1];
  return { a: median(changes.map(({ a }) => a)), b: median(changes.map(({ b }) => b)) };
}

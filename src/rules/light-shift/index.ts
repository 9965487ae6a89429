import type { BookPicture } from '../../shared/finding';
import type { AB, Forecast } from '../../shared/forecast';
import type { Target } from '../../shared/target';
import { grouped } from '../groups';
import { defineRule, greyOrToned, type Verdict } from '../rule';
import { say } from '../say';
import { forecastsOf, forTarget, ground, processName } from '../targets';
import page from './README.md';

interface Options {
  limit: number;
}

const messages = {
  book: 'Under {light} the greys of this book look about {size} away in a*, b* from what they are in daylight (D50), beside the same paper ({ground}){target}. That is the light, not the print: judge the test print under the light it will be seen in.',
  picture:
    'Under {light} this picture moves away from its neighbours by about {size} in a*, b*, although they may match in daylight ({ground}){target}: {process} makes its grey, as {encoding}, of other colourants than theirs. Save it in the encoding of its neighbours.',
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
  *check({ pictures, targets }, { limit }) {
    const prints = pictures.flatMap(picture => forecastsOf(picture).map(print => ({ picture, ...print })));
    for (const onTarget of grouped(prints, ({ target }) => target.name))
      yield* underLight(onTarget, limit, targets);
  },
});

interface Print {
  picture: BookPicture;
  target: Target;
  forecast: Forecast;
}

function* underLight(prints: Print[], limit: number, targets: readonly Target[]): Iterable<Verdict> {
  const { target, forecast } = prints[0];
  const usual = middle(prints.map(print => print.forecast.parts.light));
  const words = {
    light: target.light,
    process: processName(target),
    ground: ground(forecast),
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
      message: say(messages.picture, { ...words, size: apart.toFixed(1), encoding: picture.facts.encoding }),
      data: { target: target.name, light: target.light, change: light, usual },
    };
  }
}

/** Medians of both axes: what most pictures do, whatever a few others do. */
function middle(changes: AB[]): AB {
  const median = (values: number[]) => values.sort((x, y) => x - y)[values.length >> 1];
  return { a: median(changes.map(({ a }) => a)), b: median(changes.map(({ b }) => b)) };
}

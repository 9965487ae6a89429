import { defineRule } from '../rule';
import { say } from '../say';
import { forecastsOf, forTarget, ground, isPhotographic, processName } from '../targets';
import page from './README.md';

interface Options {
  limit: number;
}

const messages = {
  unbalanced:
    'This picture prints with a cast{direction}, not grey: its inks are out of balance on {process} by about {size} in a*, b* (from 2 on a tint is seen; {ground}){target}. Separate it again for this process with a neutral grey axis, or save it as {best}.',
} as const;

export default defineRule<Options>({
  id: 'unbalanced-grey',
  description: 'Inks that do not make grey on the target, such as equal cyan, magenta and yellow.',
  severity: 'warning',
  scope: 'picture',
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
  *check({ pictures, targets }, { limit }) {
    for (const picture of pictures) {
      const { encoding } = picture.facts;
      if (encoding !== 'four-channel' && encoding !== 'three-ink') continue;
      for (const { target, forecast } of forecastsOf(picture)) {
        const { a, b } = forecast.parts.encoding;
        const size = Math.hypot(a, b);
        if (size < limit) continue;
        const { direction } = forecast.tint;
        yield {
          picture,
          message: say(messages.unbalanced, {
            direction: direction ? ` (${direction})` : '',
            process: processName(target),
            size: size.toFixed(1),
            ground: ground(forecast),
            target: forTarget(target, targets),
            best: isPhotographic(target) ? 'rgb-neutral' : 'black-only or rgb-neutral',
          }),
          data: { target: target.name, encodingPart: { a, b }, size, direction },
        };
      }
    }
  },
});

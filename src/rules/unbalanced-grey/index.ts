import type { Target } from '../../shared/target';
import { asTaken, type Recommendation } from '../recommended';
import { defineRule } from '../rule';
import { say } from '../say';
import { forecastsOf, forTarget, guessOfInks, isPhotographic, processName } from '../targets';
import page from './README.md';

interface Options {
  limit: number;
}

const messages = {
  unbalanced:
    'By the forecast this picture prints with a cast{direction}, not grey: its inks are out of balance on {process}{target} by about {size} in a*, b* (from 2 on a tint is seen). {way}.{guess}',
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
  *check({ pictures, targets, recommend }, { limit }) {
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
            target: forTarget(target, targets),
            way: wayOut(recommend(picture, target), target),
            guess: guessOfInks(picture, forecast),
          }),
          data: {
            target: target.name,
            basis: forecast.condition.basis,
            encodingPart: { a, b },
            size,
            direction,
          },
        };
      }
    }
  },
});

/** A photographic process takes no separation; one encoding is named by all rules, unless it is inks again. */
function wayOut(recommendation: Recommendation | null, target: Target): string {
  const again = isPhotographic(target) ? '' : 'separate it again for this process with a neutral grey axis';
  const inks = recommendation?.encoding === 'four-channel' || recommendation?.encoding === 'three-ink';
  const save = recommendation && !inks ? `save it as ${asTaken(recommendation, target)}` : '';
  const ways = [save, again].filter(Boolean).join(', or ') || 'turn it into grey again from its original';
  return ways[0].toUpperCase() + ways.slice(1);
}

import type { AB } from '../../shared/forecast';
import { defineRule } from '../rule';
import { say } from '../say';
import { type ToneStep, toneSteps } from '../tone-lines';
import page from './README.md';

interface Options {
  limit: number;
}

const messages = {
  uneven:
    'This picture turns from one tint into another between its shadows and its lights, which is seen even where one tint all over would not be: {strong}, but {other}. Turn it into grey again, or list it under "toned" in the settings\' "intent" if a split tone is meant.',
} as const;

export default defineRule<Options>({
  id: 'uneven-cast',
  description: 'A cast that changes its colour between shadows and lights.',
  severity: 'note',
  scope: 'picture',
  needs: 'pixels',
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
          "Distance in a*, b* from the cast's own direction from which it counts as another colour.",
      },
    },
  },
  messages,
  page,
  *check({ pictures }, { limit }) {
    for (const picture of pictures) {
      const { encoding, space } = picture.facts;
      // What inks make is the press's matter: the forecast knows.
      if (encoding === 'colour' || space === 'cmyk') continue;
      const turn = turnOf(toneSteps(picture.facts));
      if (!turn || turn.size < limit) continue;
      yield {
        picture,
        message: say(messages.uneven, { strong: at(turn.strong), other: at(turn.other) }),
        data: { size: turn.size, strong: turn.strong, other: turn.other },
      };
    }
  },
});

/** `a* 3, b* -4 at L* 20`. */
const at = ({ L, a, b }: ToneStep) => `a* ${Math.round(a)}, b* ${Math.round(b)} at L* ${Math.round(L)}`;

/**
 * How far the tone turns away from the direction of its strongest step. A tone that only fades towards black and paper,
 * as every tone does, does not turn.
 */
function turnOf(steps: ToneStep[]): { size: number; strong: ToneStep; other: ToneStep } | null {
  if (steps.length < 2) return null;
  const size = ({ a, b }: AB) => Math.hypot(a, b);
  const strong = steps.reduce((most, step) => (size(step) > size(most) ? step : most));
  const length = size(strong);
  if (length === 0) return null;
  const [ua, ub] = [strong.a / length, strong.b / length];
  const away = ({ a, b }: AB) => Math.hypot(a * ub - b * ua, Math.min(0, a * ua + b * ub));
  const other = steps.reduce((most, step) => (away(step) > away(most) ? step : most));
  return { size: away(other), strong, other };
}

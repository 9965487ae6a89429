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

/** Angle between two hues from which they are two colours, degrees: half way from one name of a cast to the next. Own choice. */
const TWO_HUES = 45;

interface Turn {
  /** How far `other` lies to the side of the direction of `strong`, or opposite to it, in a*, b*. */
  size: number;
  strong: ToneStep;
  other: ToneStep;
}

/**
 * The two lightnesses that are seen as two colours, and are furthest from it to be one. Within one hue a tone is one,
 * however it fades towards black and paper, as every tone does.
 */
function turnOf(steps: readonly ToneStep[]): Turn | null {
  let most: Turn | null = null;
  for (const [i, one] of steps.entries())
    for (const another of steps.slice(i + 1)) {
      const turn = between(one, another);
      if (turn && (!most || turn.size > most.size)) most = turn;
    }
  return most;
}

function between(one: ToneStep, another: ToneStep): Turn | null {
  const [strong, other] = chroma(one) >= chroma(another) ? [one, another] : [another, one];
  const length = chroma(strong);
  if (length === 0) return null;
  const along = (strong.a * other.a + strong.b * other.b) / length;
  const aside = Math.abs(strong.a * other.b - strong.b * other.a) / length;
  if ((Math.atan2(aside, along) * 180) / Math.PI < TWO_HUES) return null;
  return { size: Math.hypot(aside, Math.min(0, along)), strong, other };
}

const chroma = ({ a, b }: AB): number => Math.hypot(a, b);

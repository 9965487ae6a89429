import { processOf } from '../../print/processes';
import type { BookPicture } from '../../shared/finding';
import type { Target } from '../../shared/target';
import { asTaken, type Recommendation } from '../recommended';
import { defineRule } from '../rule';
import { say } from '../say';
import { forTarget, keepsInks, processName } from '../targets';
import page from './README.md';

interface Options {
  tolerance: number;
}

const messages = {
  stated:
    'The darkest places may smear, dry badly or mark the facing page: they carry {total} % of ink, and the settings allow {limit} %{target}. {save} with a total ink limit of {limit} %.',
  usual:
    'The darkest places may smear, dry badly or mark the facing page: they carry {total} % of ink, and {process} usually takes {limit} %{target}. {save} with a lower total ink limit, or ask the print house for its own.',
} as const;

export default defineRule<Options>({
  id: 'ink-total',
  description: 'More ink in one place than the target can carry.',
  severity: 'warning',
  scope: 'picture',
  needs: 'pixels',
  intents: ['grey', 'toned', 'colour', 'line'],
  options: {
    type: 'object',
    additionalProperties: false,
    properties: {
      tolerance: {
        type: 'number',
        minimum: 0,
        default: 2,
        description:
          'Points of per cent above the limit that are let pass: rounding and compression overshoot.',
      },
    },
  },
  messages,
  page,
  *check({ pictures, targets, recommend }, { tolerance }) {
    for (const picture of pictures) {
      const total = picture.facts.ink?.maxTotal;
      if (total === undefined) continue;
      for (const target of picture.targets) {
        const limit = target.inkLimit ?? processOf(target.process).inkLimit;
        if (!keepsInks(target) || limit === null || total <= limit + tolerance) continue;
        yield {
          picture,
          message: say(target.inkLimit === null ? messages.usual : messages.stated, {
            total: Math.round(total),
            limit,
            process: processName(target),
            target: forTarget(target, targets),
            save: wayOut(picture, picture.intent === 'grey' ? recommend(picture, target) : null, target),
          }),
          data: { target: target.name, total, limit },
        };
      }
    }
  },
});

/** A grey in fewer inks carries less by itself. */
function wayOut({ facts }: BookPicture, recommendation: Recommendation | null, target: Target): string {
  const inks = recommendation?.encoding === 'four-channel' || recommendation?.encoding === 'three-ink';
  return recommendation && !inks && facts.encoding !== recommendation.encoding
    ? `Save the picture as ${asTaken(recommendation, target)}, or separate it again`
    : 'Separate the picture again';
}

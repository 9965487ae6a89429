import { processOf } from '../../print/processes';
import { defineRule } from '../rule';
import { say } from '../say';
import { forTarget, keepsInks, processName } from '../targets';
import page from './README.md';

interface Options {
  tolerance: number;
}

const messages = {
  stated:
    'The darkest places may smear, dry badly or mark the facing page: they carry {total} % of ink, and the settings allow {limit} %{target}. Separate the picture again with a total ink limit of {limit} %.',
  usual:
    'The darkest places may smear, dry badly or mark the facing page: they carry {total} % of ink, and {process} usually takes {limit} %{target}. Separate the picture again with a lower total ink limit, or ask the print house for its own.',
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
  *check({ pictures, targets }, { tolerance }) {
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
          }),
          data: { target: target.name, total, limit },
        };
      }
    }
  },
});

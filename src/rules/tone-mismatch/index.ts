import type { BookPicture } from '../../shared/finding';
import { defineRule } from '../rule';
import { say } from '../say';
import { toneAt, toneSteps } from '../tone-lines';
import page from './README.md';

interface Options {
  limit: number;
}

const messages = {
  mismatch:
    'This picture is likely to stand out from the other toned ones: its tone is about {size} away in a*, b* from that of {reference} at the same lightness, most at L* {L}. Tone it again from its grey original in the way of {reference}.',
} as const;

export default defineRule<Options>({
  id: 'tone-mismatch',
  description: 'A toned picture whose tone is off the one it is meant to match.',
  severity: 'warning',
  scope: 'picture',
  needs: 'pixels',
  intents: ['toned'],
  options: {
    type: 'object',
    additionalProperties: false,
    properties: {
      limit: {
        type: 'number',
        minimum: 0.5,
        default: 2,
        description:
          'Mean distance in a*, b* from the reference at the same lightness from which a picture is named.',
      },
    },
  },
  messages,
  page,
  *check({ pictures, everything }, { limit }) {
    for (const picture of pictures) {
      const reference = everything.find(({ path }) => path === picture.reference);
      const apart = reference && reference.path !== picture.path ? distance(picture, reference) : null;
      if (!apart || apart.mean < limit) continue;
      yield {
        picture,
        message: say(messages.mismatch, {
          size: apart.mean.toFixed(1),
          reference: picture.reference!,
          L: Math.round(apart.mostAt),
        }),
        data: { reference: picture.reference, distance: apart.mean, mostAt: apart.mostAt },
      };
    }
  },
});

/** Mean distance of two tones over the picture's area, and the lightness where it is largest; null without a tone. */
function distance(picture: BookPicture, reference: BookPicture): { mean: number; mostAt: number } | null {
  const steps = toneSteps(picture.facts);
  const wanted = toneSteps(reference.facts);
  if (steps.length === 0 || wanted.length === 0) return null;
  const total = steps.reduce((sum, { weight }) => sum + weight, 0);
  const apart = steps.map(step => {
    const aim = toneAt(wanted, step.L);
    return { ...step, size: Math.hypot(step.a - aim.a, step.b - aim.b) };
  });
  return {
    mean: apart.reduce((sum, { size, weight }) => sum + size * weight, 0) / total,
    mostAt: apart.reduce((most, step) => (step.size > most.size ? step : most)).L,
  };
}

import { defineRule } from '../rule';
import { say } from '../say';
import { percent } from '../words';
import page from './README.md';

interface Options {
  lights: number;
  shadows: number;
}

const messages = {
  lights:
    'About {share} of this picture prints as bare paper, without any shade: the lights are cut off at white in the file. Bring them back from the original if it still has them, or give them a faint tone if the paper looks like a hole there.',
  shadows:
    'About {share} of this picture prints as one flat black: the shadows are cut off at black in the file. Bring them back from the original if it still has them.',
} as const;

export default defineRule<Options>({
  id: 'clipped',
  description: 'Lights or shadows cut off in the file over more than small spots.',
  severity: 'note',
  scope: 'picture',
  needs: 'pixels',
  intents: ['grey', 'toned'],
  options: {
    type: 'object',
    additionalProperties: false,
    properties: {
      lights: {
        type: 'number',
        exclusiveMinimum: 0,
        maximum: 1,
        default: 0.05,
        description: 'Share of the area (0-1) that must be plain white before it is told.',
      },
      shadows: {
        type: 'number',
        exclusiveMinimum: 0,
        maximum: 1,
        default: 0.1,
        description: 'Share of the area (0-1) that must be plain black before it is told.',
      },
    },
  },
  messages,
  page,
  *check({ pictures }, limits) {
    for (const picture of pictures) {
      const clipped = picture.facts.tone?.clipped;
      if (!clipped || picture.facts.encoding === 'bilevel') continue;
      for (const end of ['lights', 'shadows'] as const) {
        const share = clipped[end];
        if (share < limits[end]) continue;
        yield { picture, message: say(messages[end], { share: percent(share) }), data: { end, share } };
      }
    }
  },
});

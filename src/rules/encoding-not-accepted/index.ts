import { takes } from '../accepted';
import { asTaken } from '../recommended';
import { defineRule, noOptions } from '../rule';
import { say } from '../say';
import { forTarget } from '../targets';
import { encodingName, list } from '../words';
import page from './README.md';

const messages = {
  refused:
    'The print house may refuse this picture, or convert it in a way that nobody chose: it is {encoding}, and by the settings it takes only {accepted}{target}. Save it as {best}.',
} as const;

export default defineRule({
  id: 'encoding-not-accepted',
  description: 'An encoding that the print house does not take, by the settings.',
  severity: 'error',
  scope: 'picture',
  needs: 'pixels',
  intents: ['grey', 'toned', 'line'],
  options: noOptions,
  messages,
  page,
  *check({ pictures, targets, recommend }) {
    for (const picture of pictures) {
      const { encoding } = picture.facts;
      if (encoding === 'unreadable') continue;
      for (const target of picture.targets) {
        if (takes(target, picture)) continue;
        const accepted = target.encodings!;
        const advice = picture.intent === 'grey' ? recommend(picture, target) : null;
        const best = advice?.encoding ?? accepted[0];
        const save = advice?.unsure ? asTaken(advice, target) : best;
        yield {
          picture,
          message: say(messages.refused, {
            encoding: encodingName(encoding),
            accepted: list(accepted, accepted.length),
            target: forTarget(target, targets),
            best: advice?.unsure ? save : encodingName(best),
          }),
          data: { target: target.name, encoding, accepted, best, save },
        };
      }
    }
  },
});

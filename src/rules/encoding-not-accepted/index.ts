import type { BookPicture } from '../../shared/finding';
import type { Target } from '../../shared/target';
import { takes } from '../accepted';
import { asTaken } from '../recommended';
import { defineRule, noOptions } from '../rule';
import { say } from '../say';
import { forTarget } from '../targets';
import { type Loss, losesUnasked, TONELESS } from '../unasked';
import { encodingName, list } from '../words';
import page from './README.md';

const messages = {
  refused:
    'The print house may refuse this picture, or convert it in a way that nobody chose: it is {encoding}, and by the settings it takes only {accepted}{target}. Save it as {best}.{kept}',
  kept: '{why}, so a conversion makes that of it only where it is named by itself, or all are asked for ("--all").',
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
        const toned = staysToned(picture, target);
        const advice = toned ? null : recommend(picture, target);
        const best = toned ? 'rgb-toned' : (advice?.encoding ?? accepted[0]);
        const save = advice?.unsure ? asTaken(advice, target) : best;
        yield {
          picture,
          message: say(messages.refused, {
            encoding: encodingName(encoding),
            accepted: list(accepted, accepted.length),
            target: forTarget(target, targets),
            best: advice?.unsure ? save : encodingName(best),
            kept: advice ? keptWords(picture) : '',
          }),
          data: { target: target.name, encoding, accepted, best, save },
        };
      }
    }
  },
});

/** A tone that is meant and not taken as it is stored, but would be in RGB. */
const staysToned = (picture: BookPicture, target: Target): boolean =>
  picture.intent === 'toned' &&
  !TONELESS.has(picture.facts.encoding) &&
  takes(target, { ...picture, facts: { ...picture.facts, encoding: 'rgb-toned' } });

/** That a conversion of a whole folder leaves it alone, and why. */
function keptWords(picture: BookPicture): string {
  const loss = losesUnasked(picture);
  if (loss === null) return '';
  const why = loss === 'tone' && picture.intentStated ? TONED : WHY[loss];
  return ` ${say(messages.kept, { why })}`;
}

const TONED = 'The settings say that it is meant to be toned';
const WHY: Record<Loss, string> = {
  colour: 'It is in colour',
  tone: 'It has a strong tone, which may be meant',
  line: 'It is stored in one bit, which keeps the edges of line art sharp',
};

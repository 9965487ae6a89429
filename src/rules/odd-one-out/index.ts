import type { BookPicture } from '../../shared/finding';
import { takes } from '../accepted';
import { type ApartOptions, apartOptions } from '../apart';
import { FEW, grouped } from '../groups';
import { kindOf } from '../recommended';
import { type BookView, defineRule, greyOrToned, type Verdict } from '../rule';
import { worstPair } from './pairs';
import { type Print, printsOf } from './prints';
import page from './README.md';
import { againstTheAlike } from './sets';
import { messages, Verdicts } from './verdicts';

/** Of fewer pictures nobody can say which one is odd. Own choice. */
const LEAST = 4;

export default defineRule<ApartOptions>({
  id: 'odd-one-out',
  description: 'A picture that is stored like its neighbours and will print unlike them.',
  severity: 'warning',
  scope: 'both',
  compares: true,
  needs: 'pixels',
  intents: greyOrToned,
  options: apartOptions(
    'Distance in a*, b* from the middle of the others from which a picture is seen to differ.',
  ),
  messages,
  page,
  *check({ pictures, targets, spreads }, options) {
    // ways to store grey are `mixed-encodings`' matter; a tone that has a reference is `tone-mismatch`'s
    const compared = pictures.filter(picture => kindOf(picture) !== null && !picture.reference);
    for (const together of grouped(compared, p => JSON.stringify([p.part, p.intent])))
      for (const alike of grouped(together, picture => kindOf(picture)!))
        for (const prints of printsOf(alike)) {
          const verdicts = new Verdicts(prints, targets, options);
          if (prints.length >= LEAST) yield* amongMany(prints, verdicts, options);
          else if (areAllGreys(alike, together) && !tellsFacing(prints, spreads))
            yield* amongFew(prints, verdicts, options);
        }
  },
});

function* amongMany(prints: Print[], verdicts: Verdicts, options: ApartOptions): Iterable<Verdict> {
  const { odd, alike } = againstTheAlike(prints, options);
  if (!odd.length) return;
  if (alike.length < 2) yield verdicts.none();
  else if (odd.length > FEW || odd.length >= alike.length) yield verdicts.many(odd, alike);
  else for (const one of odd) yield verdicts.one(one, alike);
}

function* amongFew(prints: Print[], verdicts: Verdicts, options: ApartOptions): Iterable<Verdict> {
  const worst = worstPair(prints, options);
  if (worst) yield verdicts.few(worst);
}

/**
 * Whether there is nothing but these to match: beside other ways to store grey `mixed-encodings` names them, and of two
 * or three tones that are meant each may be.
 */
const areAllGreys = ([first]: readonly BookPicture[], together: readonly BookPicture[]): boolean =>
  first.intent === 'grey' &&
  isTaken(first) &&
  together.filter(isTaken).every(p => kindOf(p) === kindOf(first));

const isTaken = (picture: BookPicture): boolean => picture.targets.every(target => takes(target, picture));

/** Two on one spread are told by `facing-difference`. */
const tellsFacing = (prints: readonly Print[], spreads: BookView['spreads']): boolean =>
  prints.length === 2 &&
  prints[0].target !== null &&
  spreads.some(spread => prints.every(({ picture }) => spread.includes(picture.path)));

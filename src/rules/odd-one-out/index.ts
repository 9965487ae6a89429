import type { BookPicture } from '../../shared/finding';
import type { Target } from '../../shared/target';
import { type ApartOptions, apartOptions, tintsByTarget, towards } from '../apart';
import { FEW, grouped, ofPart, paths } from '../groups';
import { kindOf } from '../recommended';
import { defineRule, greyOrToned, type Verdict } from '../rule';
import { say } from '../say';
import { forTarget, processName } from '../targets';
import { count, encodingName, inOrders, list } from '../words';
import { causeAmong, causeOf } from './cause';
import page from './README.md';
import { againstTheAlike, type Odd, type Print, type Sets } from './sets';

/** Of fewer pictures nobody can say which one is odd. Own choice. */
const LEAST = 4;

const messages = {
  one: 'This picture is likely to stand out from its neighbours on {process}{target}: by the forecast it is about {size} away in a*, b*{way} from most of {all}{part} that are {encoding} like it, which is seen side by side {orders}. {cause}',
  many: 'The {all}{part} that are {encoding} are unlikely to match each other on {process}{target}: by the forecast {odd} of them ({names}) are about {size} or more away in a*, b* from {others} others, which are alike. {cause}',
  none: 'The {all}{part} that are {encoding} are unlikely to match each other on {process}{target}: by the forecast hardly two of them are alike ({names}). {cause}',
} as const;

export default defineRule<ApartOptions>({
  id: 'odd-one-out',
  description: 'A picture that is stored like its neighbours and will print unlike them.',
  severity: 'warning',
  scope: 'both',
  compares: true,
  needs: 'forecast',
  intents: greyOrToned,
  options: apartOptions(
    'Distance in a*, b* from the middle of the others from which a picture is seen to differ.',
  ),
  messages,
  page,
  *check({ pictures, targets }, options) {
    // ways to store grey are `mixed-encodings`' matter; a tone that has a reference is `tone-mismatch`'s
    const compared = pictures.filter(picture => kindOf(picture) !== null && !picture.reference);
    for (const together of grouped(compared, p => JSON.stringify([p.part, p.intent, kindOf(p)])))
      for (const prints of printsOf(together))
        if (prints.length >= LEAST) yield* oddIn(prints, targets, options);
  },
});

/** The pictures on each of their targets. */
function printsOf(pictures: readonly BookPicture[]): Print[][] {
  const prints = pictures.flatMap(picture =>
    tintsByTarget(picture).map(({ target, tints }): Print => ({ picture, target, tints })),
  );
  return grouped(prints, ({ target }) => target.name);
}

function* oddIn(prints: Print[], targets: readonly Target[], options: ApartOptions): Iterable<Verdict> {
  const sets = againstTheAlike(prints, options);
  if (!sets.odd.length) return;
  const words = wordsOf(prints, targets);
  if (sets.alike.length < 2) yield amongAll(prints, words);
  else if (sets.odd.length > FEW || sets.odd.length >= sets.alike.length)
    yield aboutMany(sets, words, prints);
  else for (const odd of sets.odd) yield aboutOne(odd, sets, words, prints);
}

type Words = ReturnType<typeof wordsOf>;

function wordsOf(prints: readonly Print[], targets: readonly Target[]) {
  const [{ target, picture }] = prints;
  return {
    process: processName(target),
    target: forTarget(target, targets),
    all: count(prints.length, 'picture'),
    part: ofPart(picture),
    encoding: [...new Set(prints.map(print => encodingName(print.picture.facts.encoding)))].join(' or '),
  };
}

function aboutOne(odd: Odd, { alike }: Sets, words: Words, prints: readonly Print[]): Verdict {
  const { picture, target, apart } = odd;
  const way = towards(apart);
  return {
    picture,
    message: say(messages.one, {
      ...words,
      size: apart.size.toFixed(1),
      way: way ? `, ${way},` : '',
      orders: inOrders(apart.probability),
      cause: causeOf([picture], pictured(alike)),
    }),
    data: {
      target: target.name,
      difference: apart.difference,
      size: apart.size,
      probability: apart.probability,
      all: prints.length,
    },
  };
}

/** More than a few, or as many as the others: then it is the set that has no one tint. */
function aboutMany({ odd, alike }: Sets, words: Words, prints: readonly Print[]): Verdict {
  const names = paths(pictured(odd));
  const size = Math.min(...odd.map(({ apart }) => apart.size));
  return {
    message: say(messages.many, {
      ...words,
      odd: odd.length,
      others: alike.length,
      size: size.toFixed(1),
      names: list(names),
      cause: causeOf(pictured(odd), pictured(alike)),
    }),
    data: { target: odd[0].target.name, size, all: prints.length, pictures: names },
  };
}

function amongAll(prints: readonly Print[], words: Words): Verdict {
  const names = paths(pictured(prints));
  return {
    message: say(messages.none, { ...words, names: list(names), cause: causeAmong(pictured(prints)) }),
    data: { target: prints[0].target.name, all: prints.length, pictures: names },
  };
}

const pictured = (prints: readonly Print[]): BookPicture[] => prints.map(({ picture }) => picture);

import { type Apart, apart, middleOf } from '../../print/apart';
import type { BookPicture } from '../../shared/finding';
import type { Target } from '../../shared/target';
import { type ApartOptions, apartOptions, tintsByTarget, towards } from '../apart';
import { FEW, grouped, ofPart, paths } from '../groups';
import { kindOf } from '../recommended';
import { defineRule, greyOrToned, type Verdict } from '../rule';
import { say } from '../say';
import { forTarget, processName } from '../targets';
import { count, encodingName, inOrders, list } from '../words';
import page from './README.md';

/** Of fewer pictures nobody can say which one is odd. Own choice. */
const LEAST = 4;

const messages = {
  one: 'This picture is likely to stand out from its neighbours on {process}{target}: by the forecast it is about {size} away in a*, b*{way} from most of {all}{part} that are {encoding} like it, which is seen side by side {orders}. {cause}',
  many: 'The {all}{part} that are {encoding} are unlikely to match each other on {process}{target}: by the forecast {odd} of them are about {size} or more away from the others in a*, b* ({names}). {cause}',
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
    for (const alike of grouped(compared, p => JSON.stringify([p.part, p.intent, kindOf(p)])))
      if (alike.length >= LEAST) yield* oddIn(alike, targets, options);
  },
});

interface Odd {
  picture: BookPicture;
  target: Target;
  apart: Apart;
}

function* oddIn(
  alike: BookPicture[],
  targets: readonly Target[],
  { limit, chance }: ApartOptions,
): Iterable<Verdict> {
  const prints = alike.flatMap(picture =>
    tintsByTarget(picture).map(({ target, tints }) => ({ picture, target, tints })),
  );
  for (const onTarget of grouped(prints, ({ target }) => target.name)) {
    const middle = middleOf(onTarget.map(({ tints }) => tints));
    if (!middle || onTarget.length < LEAST) continue;
    const odd = onTarget.flatMap(({ picture, target, tints }): Odd[] => {
      const away = apart(tints, middle, limit);
      return away && away.probability >= chance && away.byPrinter < chance
        ? [{ picture, target, apart: away }]
        : [];
    });
    if (odd.length > FEW) yield aboutMany(odd, alike, targets);
    else for (const one of odd) yield aboutOne(one, alike, targets);
  }
}

function words({ picture, target }: Odd, alike: readonly BookPicture[], targets: readonly Target[]) {
  return {
    process: processName(target),
    target: forTarget(target, targets),
    all: count(alike.length, 'picture'),
    part: ofPart(picture),
    encoding: [...new Set(alike.map(({ facts }) => encodingName(facts.encoding)))].join(' or '),
  };
}

function aboutOne(odd: Odd, alike: readonly BookPicture[], targets: readonly Target[]): Verdict {
  const { picture, target, apart } = odd;
  const way = towards(apart);
  return {
    picture,
    message: say(messages.one, {
      ...words(odd, alike, targets),
      size: apart.size.toFixed(1),
      way: way ? `, ${way},` : '',
      orders: inOrders(apart.probability),
      cause: cause(picture, false),
    }),
    data: {
      target: target.name,
      difference: apart.difference,
      size: apart.size,
      probability: apart.probability,
      all: alike.length,
    },
  };
}

/** More than a few: then it is the set that has no one tint. */
function aboutMany(odd: Odd[], alike: readonly BookPicture[], targets: readonly Target[]): Verdict {
  const names = paths(odd.map(({ picture }) => picture));
  const size = Math.min(...odd.map(({ apart }) => apart.size));
  return {
    message: say(messages.many, {
      ...words(odd[0], alike, targets),
      odd: names.length,
      size: size.toFixed(1),
      names: list(names),
      cause: cause(odd[0].picture, true),
    }),
    data: { target: odd[0].target.name, size, all: alike.length, pictures: names },
  };
}

function cause(picture: BookPicture, several: boolean): string {
  const [its, them, original] = several ? ['Their', 'them', 'originals'] : ['Its', 'it', 'original'];
  if (picture.intent === 'toned')
    return `The tone itself differs: tone ${them} again from the grey ${original} with the settings of the others.`;
  const again = `again from ${its.toLowerCase()}`;
  if (picture.facts.space === 'cmyk')
    return `${its} inks are mixed in another way: separate ${them} ${again} grey ${original} as the others were.`;
  return `${its} values have another colour: turn ${them} into grey ${again} ${original} as the others were, or list all of them under "toned" in the settings' "intent" if tones are meant.`;
}

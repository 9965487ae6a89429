import { type Apart, apart, middleOf, SEEN_APART, tintsOf } from '../../print/apart';
import type { BookPicture } from '../../shared/finding';
import type { Target } from '../../shared/target';
import { type ApartOptions, apartOnTargets, apartOptions, towards } from '../apart';
import { kindOf, type Recommend, saveAs } from '../recommended';
import { defineRule, greyOrToned, type Verdict } from '../rule';
import { say } from '../say';
import { forecastsOf, forTarget, processName } from '../targets';
import { encodingName, inOrders } from '../words';
import page from './README.md';

const messages = {
  leaning:
    'Beside {other} on the same spread this picture is likely to look {way} on {process}{target}: by the forecast the two are about {size} apart in a*, b*, which is seen {orders}{alike}. {cause}',
  drifting:
    'Beside {other} on the same spread this picture is likely to look unlike it on {process}{target}, in one order this way and in the next another: by the forecast that is seen {orders}{alike}. {cause}',
} as const;

export default defineRule<ApartOptions>({
  id: 'facing-difference',
  description: 'Pictures of one spread that are likely to be seen as two different greys.',
  severity: 'warning',
  scope: 'picture',
  compares: true,
  needs: 'forecast',
  intents: greyOrToned,
  options: apartOptions('Distance in a*, b* from which two pictures side by side are seen as two greys.'),
  messages,
  page,
  *check({ pictures, targets, spreads, recommend, isWaived }, { limit, chance }) {
    for (const spread of spreads) {
      const seen = pictures.filter(
        picture => spread.includes(picture.path) && picture.facts.page === 1 && kindOf(picture) !== null,
      );
      for (const pair of pairsApart(seen, limit, chance)) {
        const verdict = verdictOn(pair, pictures, targets, recommend);
        yield verdict;
        // one finding a spread: when the worst pair is put right, or lived with, the next is told
        if (!isWaived(verdict)) break;
      }
    }
  },
});

interface Pair {
  one: BookPicture;
  other: BookPicture;
  target: Target;
  apart: Apart;
}

/** The worst first. */
function pairsApart(seen: readonly BookPicture[], limit: number, chance: number): Pair[] {
  const pairs: Pair[] = [];
  for (const [i, one] of seen.entries())
    for (const other of seen.slice(i + 1)) {
      // a tone beside a neutral grey was meant to differ
      if (one.intent !== other.intent) continue;
      for (const { target, apart } of apartOnTargets(one, other, limit)) {
        const { probability, byPrinter } = apart;
        // what equal files do too is the printer's matter
        if (probability >= chance && byPrinter < chance) pairs.push({ one, other, target, apart });
      }
    }
  return pairs.sort((x, y) => y.apart.probability - x.apart.probability);
}

/** Said of the one of the two that is further from the rest of the book; of two alike in that, of the later. */
function verdictOn(
  { one, other, target, apart: between }: Pair,
  book: readonly BookPicture[],
  targets: readonly Target[],
  recommend: Recommend,
): Verdict {
  const rest = book.filter(
    ({ path, part, intent }) =>
      path !== one.path && path !== other.path && part === one.part && intent === one.intent,
  );
  const middle = middleOf(rest.flatMap(picture => tintsOn(picture, target)));
  const away = (picture: BookPicture) =>
    (middle && apart(tintsOn(picture, target)[0], middle, SEEN_APART)?.size) ?? 0;
  const turned = away(one) > away(other);
  const [picture, beside] = turned ? [one, other] : [other, one];
  const { difference } = between;
  const own = turned ? between : { ...between, difference: { a: -difference.a, b: -difference.b } };
  const way = towards(own);
  const save = bothAs(picture, beside, recommend);
  const words = {
    other: beside.path,
    process: processName(target),
    target: forTarget(target, targets),
    orders: inOrders(own.probability),
    alike: own.byPrinter >= 0.05 ? ` (of two equal files ${inOrders(own.byPrinter)})` : '',
    cause: cause(picture, beside, save, recommend),
  };
  return {
    picture,
    message: way
      ? say(messages.leaning, { ...words, way, size: own.size.toFixed(1) })
      : say(messages.drifting, words),
    data: {
      target: target.name,
      beside: beside.path,
      difference: own.difference,
      size: own.size,
      probability: own.probability,
      byPrinter: own.byPrinter,
      ...(save && save !== picture.facts.encoding && { save }),
    },
  };
}

const tintsOn = (picture: BookPicture, { name }: Target) =>
  forecastsOf(picture)
    .filter(({ target }) => target.name === name)
    .map(({ forecast }) => tintsOf(forecast));

/** What both are to be saved as, where they are stored in different ways. */
const bothAs = (picture: BookPicture, beside: BookPicture, recommend: Recommend): string | null =>
  kindOf(picture) !== kindOf(beside) && picture.intent === 'grey' ? saveAs(picture, recommend) : null;

function cause(picture: BookPicture, beside: BookPicture, save: string | null, recommend: Recommend): string {
  const [own, its] = [picture, beside].map(({ facts }) => encodingName(facts.encoding));
  if (kindOf(picture) !== kindOf(beside)) {
    const isSo = ({ facts }: BookPicture) =>
      picture.targets.every(target => recommend(picture, target)?.encoding === facts.encoding);
    const way = save ? wayTo(save, beside.path, isSo(picture), isSo(beside)) : 'Save both in the same way';
    return `It is ${own}, and ${beside.path} is ${its}. ${way}.`;
  }
  // a trace of colour over R = G = B is no other way to store a grey
  const both = own === its ? `Both are ${own}` : `It is ${own}, and ${beside.path} is ${its}`;
  if (picture.intent === 'toned') return `${both}, with different tones. Give both the same one.`;
  return `${both}, with values of different colour. Turn both into grey again in one way from their originals.`;
}

/** Of two pictures, of which one may be stored as both are to be. */
function wayTo(save: string, other: string, isSo: boolean, otherIsSo: boolean): string {
  if (isSo) return `Leave it, and save ${other} as ${save}`;
  return otherIsSo ? `Save it as ${save}` : `Save both as ${save}`;
}

import type { BookPicture } from '../../shared/finding';
import type { Encoding } from '../../shared/picture';
import type { Target } from '../../shared/target';
import { takes } from '../accepted';
import { grouped, ofPart, paths } from '../groups';
import { pricesOf } from '../price';
import { kindOf, type Recommend, type Recommendation, saveAs } from '../recommended';
import { defineRule, greyOrToned, noOptions, type Verdict } from '../rule';
import { say } from '../say';
import { forecastsOf, guessOfInks, hasForeignInks, isPhotographic } from '../targets';
import { count, encodingName, list } from '../words';
import page from './README.md';

const messages = {
  odd: 'This picture {likely} print in another grey than its neighbours: it is {encoding}, and {most} of {all}{part} are {majority}{traces}. Save it as {best}.{price}{guess}',
  toned:
    'This picture is likely to stand out from its neighbours by its tone: it is {encoding}, and {most} of {all}{part} are {majority}{traces}. Save it as {best}, or list it under "toned" in the settings\' "intent" if the tone is meant.{price}{guess}',
  amongToned:
    'This picture is likely to stand out among toned neighbours: it is {encoding}, and {most} of {all}{part} are {majority}{traces}. Give it the tone of its neighbours, or make all of them neutral.{guess}',
  split:
    'The pictures{part} {unlikely} match each other in print: {groups}{odd}. Save all of them as {best}{why}{tones}. That leaves {rest} to convert.{shortest}{price}{guess}',
} as const;

export default defineRule({
  id: 'mixed-encodings',
  description: 'Pictures of one part and intent that store their grey in different ways.',
  severity: 'warning',
  scope: 'both',
  compares: true,
  needs: 'pixels',
  intents: greyOrToned,
  options: noOptions,
  messages,
  page,
  *check({ pictures, targets, recommend }) {
    // What the print house refuses is put right for that reason, and then takes its place among the others.
    const compared = pictures.filter(p => kindOf(p) !== null && p.targets.every(target => takes(target, p)));
    for (const together of grouped(compared, p => JSON.stringify([p.part, p.intent])))
      yield* compare(together, recommend, targets);
  },
});

/** Pictures of one part and intent. */
function* compare(
  together: BookPicture[],
  recommend: Recommend,
  targets: readonly Target[],
): Iterable<Verdict> {
  const groups = grouped(together, p => kindOf(p)!).sort(largestFirst);
  if (groups.length < 2) return;
  const [first] = groups;
  const largest = kindOf(first[0])!;
  const { words: best, encodings, why } = bestFor(first[0], largest, recommend);
  const convert = together.filter(picture => encodings.some(encoding => encoding !== kindOf(picture)));
  // where most are to be changed themselves, nothing is wrong with the few that are not like them
  if (first.length * 2 > together.length && !convert.includes(first[0])) {
    for (const picture of convert) {
      const told = template(kindOf(picture)!, largest);
      yield {
        picture,
        message: say(messages[told], {
          likely: goOneWay([picture, first[0]]) ? 'may' : 'is likely to',
          encoding: encodingName(picture.facts.encoding),
          most: paths(first).length,
          all: count(paths(together).length, 'picture'),
          part: ofPart(first[0]),
          majority: nameOf(first),
          traces: traces(first),
          best,
          price: pricesOf([picture], recommend, targets),
          guess: guessOf([picture, first[0]]),
        }),
        data: {
          encoding: picture.facts.encoding,
          majority: largest,
          best: encodings,
          most: paths(first).length,
          all: paths(together).length,
          // for who converts, in words
          ...(told !== 'amongToned' && { save: best }),
        },
      };
    }
    return;
  }
  const names = paths(convert);
  const odd = first.length * 2 > together.length ? paths(groups.slice(1).flat()) : [];
  yield {
    message: say(messages.split, {
      part: ofPart(first[0]),
      unlikely: goOneWay(together) ? 'may not' : 'are unlikely to',
      groups: list(groups.map(groupWords), groups.length),
      odd: odd.length ? `; unlike most: ${list(odd, 5)}` : '',
      best,
      why: reason(groups, encodings, why),
      tones: first[0].intent === 'grey' && convert.some(isToned) ? TONES : '',
      rest: names.length === paths(together).length ? 'all of them' : list(names, 5),
      shortest: shortestWay(first, together, convert),
      price: pricesOf(convert, recommend, targets),
      guess: guessOf(together),
    }),
    data: {
      groups: groups.map(group => ({ encoding: kindOf(group[0]), pictures: paths(group) })),
      // those that are not like most, where most are alike
      ...(odd.length && { odd }),
      best: encodings,
      save: best,
      convert: names,
    },
  };
}

/** Said where the encoding that prints best is not the one that leaves the fewest to convert. */
function shortestWay(
  first: readonly BookPicture[],
  together: readonly BookPicture[],
  convert: readonly BookPicture[],
): string {
  const fewest = together.length - first.length;
  if (fewest >= convert.length || isForeign(first[0])) return '';
  return ` The shortest way to one encoding would be ${kindOf(first[0])}: ${count(fewest, 'picture')} to convert instead of ${convert.length}.`;
}

/** R = G = B and one grey channel are the same to a process that prints from R, G, B; only a print house can treat them otherwise. */
const goOneWay = (pictures: readonly BookPicture[]): boolean =>
  pictures.every(
    picture =>
      /^(rgb-neutral|single-channel)$/.test(kindOf(picture)!) &&
      picture.targets.length > 0 &&
      picture.targets.every(isPhotographic),
  );

/** No way to one encoding ends at inks that the process has none of. */
const isForeign = (picture: BookPicture): boolean =>
  picture.targets.some(target => hasForeignInks(picture, target));

interface Best {
  /** As a sentence ends with it. */
  words: string;
  /** One, or one for each target. */
  encodings: Encoding[];
  why: Recommendation['why'] | null;
}

/** Greys go by the recommendation that all rules share; toned pictures follow each other. */
function bestFor(picture: BookPicture, largest: Encoding, recommend: Recommend): Best {
  const found =
    picture.intent === 'grey'
      ? (picture.targets.length ? picture.targets : [null]).flatMap(
          target => recommend(picture, target) ?? [],
        )
      : [];
  const encodings = [...new Set(found.map(({ encoding }) => encoding))];
  const words = encodings.length ? saveAs(picture, recommend) : null;
  return words
    ? { words, encodings, why: encodings.length === 1 ? found[0].why : null }
    : { words: encodingName(largest), encodings: [largest], why: null };
}

/** Why this encoding and not another that is present: said truly, "the fewest" only where it is so. */
function reason(groups: BookPicture[][], encodings: Encoding[], why: Best['why']): string {
  if (encodings.length > 1) return '';
  const [first, second] = groups;
  const kept = groups.find(group => kindOf(group[0]) === encodings[0])?.length ?? 0;
  const equal = groups.every(group => group.length === kept);
  const prints: Partial<Record<Recommendation['why'], string>> = {
    even: 'by the forecast no other that the target is likely to take prints clearly less often with a visible tint',
    range:
      'by the forecast it has the deepest black of those that the target is likely to take, and none of them prints clearly less often with a visible tint',
    read: 'prints of this house that were sent so have been read, and the others are less sure',
  };
  const reasons = [
    kept === first.length && kept > second.length ? 'it leaves the fewest to convert' : '',
    equal ? 'the work is the same whichever is chosen' : '',
    (why && prints[why]) ?? '',
  ];
  const said = reasons.filter(Boolean).join('; ');
  return said && ` (${said})`;
}

/** Inks beside other greys on a process without inks: once for all of them. */
const guessOf = (pictures: readonly BookPicture[]): string =>
  pictures
    .flatMap(picture => forecastsOf(picture).map(({ forecast }) => guessOfInks(picture, forecast)))
    .find(Boolean) ?? '';

const groupWords = (group: BookPicture[]): string => {
  const many = paths(group).length;
  return `${many} ${many === 1 ? 'is' : 'are'} ${nameOf(group)}${traces(group)}`;
};

/** R = G = B is said only of pictures that are. */
const nameOf = (group: BookPicture[]): string =>
  encodingName(group.every(hasTraces) ? 'rgb-residual' : kindOf(group[0])!);

/** The report's table counts pictures with a trace of colour apart; here they stand among R = G = B. */
function traces(group: BookPicture[]): string {
  const some = group.filter(hasTraces).length;
  return some && some < group.length ? `, ${some} of them with left-over colour` : '';
}

const isToned = ({ facts }: BookPicture) => facts.encoding === 'rgb-toned';
const TONES = ', but list those whose tone is meant under "toned" in the settings\' "intent"';

const hasTraces = ({ facts }: BookPicture) => facts.encoding === 'rgb-residual';

function template(encoding: Encoding, majority: Encoding): 'odd' | 'toned' | 'amongToned' {
  if (majority === 'rgb-toned') return 'amongToned';
  return encoding === 'rgb-toned' ? 'toned' : 'odd';
}

/** Equally large ones by name, so that the order of files says nothing; R = G = B first. */
function largestFirst(x: BookPicture[], y: BookPicture[]): number {
  const rgbFirst = (group: BookPicture[]) => (kindOf(group[0]) === 'rgb-neutral' ? 0 : 1);
  return y.length - x.length || rgbFirst(x) - rgbFirst(y) || (kindOf(x[0])! < kindOf(y[0])! ? -1 : 1);
}

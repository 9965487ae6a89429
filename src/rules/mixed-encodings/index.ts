import type { BookPicture } from '../../shared/finding';
import type { Encoding } from '../../shared/picture';
import { takes } from '../accepted';
import { grouped, ofPart, paths } from '../groups';
import { defineRule, greyOrToned, noOptions, type Verdict } from '../rule';
import { say } from '../say';
import { visibleTint } from '../targets';
import { count, encodingName, list } from '../words';
import page from './README.md';

const messages = {
  odd: 'This picture is likely to print in another grey than its neighbours: it is {encoding}, and {most} of {all}{part} are {majority}. Save it as {majority}.',
  toned:
    'This picture will stand out from its neighbours by its tone: it is {encoding}, and {most} of {all}{part} are {majority}. Save it as {majority}, or list it under "toned" in the settings\' "intent" if the tone is meant.',
  amongToned:
    'This picture will stand out among toned neighbours: it is {encoding}, and {most} of {all}{part} are {majority}. Give it the tone of its neighbours, or make all of them neutral.',
  split:
    'The pictures{part} are unlikely to match each other in print: {groups}. Save all of them in one encoding; the shortest way is {best}, which leaves {rest} to convert.',
} as const;

/**
 * Encodings that printing treats alike. A trace of colour over R = G = B does not make another encoding of it
 * (`residual-chroma` judges the trace); line art and colour are not compared with greys.
 */
function kind({ facts }: BookPicture): Encoding | null {
  switch (facts.encoding) {
    case 'rgb-residual':
      return 'rgb-neutral';
    case 'bilevel':
    case 'colour':
    case 'unreadable':
      return null;
    default:
      return facts.encoding;
  }
}

export default defineRule({
  id: 'mixed-encodings',
  description: 'Pictures of one part and intent that store their grey in different ways.',
  severity: 'warning',
  scope: 'both',
  needs: 'pixels',
  intents: greyOrToned,
  options: noOptions,
  messages,
  page,
  *check({ pictures }) {
    // What the print house refuses is put right for that reason, and then takes its place among the others.
    const compared = pictures.filter(p => kind(p) !== null && p.targets.every(target => takes(target, p)));
    for (const together of grouped(compared, p => JSON.stringify([p.part, p.intent])))
      yield* compare(together);
  },
});

/** Pictures of one part and intent. */
function* compare(together: BookPicture[]): Iterable<Verdict> {
  const groups = grouped(together, p => kind(p)!).sort(largestFirst);
  if (groups.length < 2) return;
  const [first, ...others] = groups;
  const majority = kind(first[0])!;
  const all = count(together.length, 'picture');
  const part = ofPart(first[0]);
  if (first.length * 2 > together.length) {
    const words = { most: first.length, all, part, majority: encodingName(majority) };
    for (const picture of others.flat()) {
      const encoding = kind(picture)!;
      yield {
        picture,
        message: say(messages[template(encoding, majority)], { ...words, encoding: encodingName(encoding) }),
        data: { encoding, majority, most: first.length, all: together.length },
      };
    }
    return;
  }
  yield {
    message: say(messages.split, {
      part,
      groups: groups.map(group => `${group.length} are ${encodingName(kind(group[0])!)}`).join(', '),
      best: encodingName(majority),
      rest: list(paths(others.flat()), 5),
    }),
    data: {
      groups: groups.map(group => ({ encoding: kind(group[0]), pictures: paths(group) })),
      best: majority,
    },
  };
}

function template(encoding: Encoding, majority: Encoding): 'odd' | 'toned' | 'amongToned' {
  if (majority === 'rgb-toned') return 'amongToned';
  return encoding === 'rgb-toned' ? 'toned' : 'odd';
}

/** Where two ways are equally short, the one that prints with less tint goes first, then R = G = B. */
function largestFirst(x: BookPicture[], y: BookPicture[]): number {
  const rgbFirst = (group: BookPicture[]) => (kind(group[0]) === 'rgb-neutral' ? 0 : 1);
  return y.length - x.length || visibleTint(x) - visibleTint(y) || rgbFirst(x) - rgbFirst(y);
}

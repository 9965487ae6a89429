import type { BookPicture } from '../shared/finding';
import type { BookView, Verdict } from './rule';

/** Up to so many pictures are named one by one; more with the same thing wrong become one line for the book. */
export const FEW = 3;

/**
 * What is said of things alike: of each by itself while they are few, else of all at once. What somebody lives with is said by
 * itself whatever comes to be like it.
 */
export function* oneByOne<T>(
  alike: readonly T[],
  {
    one,
    all,
    isWaived,
  }: { one: (thing: T) => Verdict; all: (things: T[]) => Verdict } & Pick<BookView, 'isWaived'>,
): Iterable<Verdict> {
  const each = alike.map(thing => ({ thing, verdict: one(thing) }));
  const others = each.filter(({ verdict }) => !isWaived(verdict));
  const isMany = others.length > FEW;
  if (isMany) yield all(others.map(({ thing }) => thing));
  for (const said of each) if (!isMany || !others.includes(said)) yield said.verdict;
}

/** Things with the same key together, in the order in which the keys first appear. */
export function grouped<T>(things: Iterable<T>, key: (thing: T) => string): T[][] {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const k = key(thing);
    const group = groups.get(k);
    if (group) group.push(thing);
    else groups.set(k, [thing]);
  }
  return [...groups.values()];
}

export const paths = (pictures: readonly BookPicture[]): string[] => [
  ...new Set(pictures.map(picture => picture.path)),
];

/** Pictures of one part: they lie together in print, so they are compared with each other and with no others. */
export const byPart = (pictures: Iterable<BookPicture>): BookPicture[][] =>
  grouped(pictures, picture => JSON.stringify(picture.part));

/** ` of part "cover"`, or nothing for the book's own pictures. */
export const ofPart = (picture: BookPicture): string =>
  picture.part === null ? '' : ` of part "${picture.part}"`;

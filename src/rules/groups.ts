import type { BookPicture } from '../shared/finding';

/** Up to so many pictures are named one by one; more with the same thing wrong become one line for the book. */
export const FEW = 3;

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

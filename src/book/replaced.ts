import type { BookPicture } from '../shared/finding';

/** So many pictures are named. */
const NAMED = 6;

/**
 * Marks pictures of which the book holds a converted copy that says so itself: the copy is printed, so the original
 * takes no part any more. A copy that cannot be read replaces nothing, nor does one that no layout places where a layout
 * places the original.
 * @param pictures sorted by path: of several copies the first is named
 */
export function markReplaced(pictures: readonly BookPicture[]): void {
  const copies = new Map<string, BookPicture>();
  for (const picture of pictures) {
    const { remedied, unreadable } = picture.facts;
    if (remedied && !unreadable && !copies.has(remedied.from)) copies.set(remedied.from, picture);
  }
  for (const picture of pictures) {
    const copy = copies.get(picture.facts.sha256);
    if (copy === undefined || copy.path === picture.path) continue;
    if (picture.placedAt?.length && !copy.placedAt?.length) continue;
    picture.replacedBy = copy.path;
    picture.targets = [];
  }
}

/** What a person should know of originals that are not judged; nothing where there are none. */
export function replacedNotices(pictures: readonly BookPicture[]): string[] {
  const pairs = [
    ...new Set(pictures.flatMap(({ path, replacedBy }) => (replacedBy ? [`${path} by ${replacedBy}`] : []))),
  ];
  if (pairs.length === 0) return [];
  const what =
    pairs.length === 1
      ? 'One picture is replaced by a converted copy and is not judged'
      : `${pairs.length} pictures are replaced by converted copies and are not judged`;
  const more = pairs.length > NAMED ? ` and ${pairs.length - NAMED} more` : '';
  return [`${what}: ${pairs.slice(0, NAMED).join(', ')}${more}.`];
}

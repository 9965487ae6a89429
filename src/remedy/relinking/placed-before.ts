import type { Relinking } from '../../book/layouts/relink-all';

/** How many of the pictures that are to be placed are, without a change. */
export function placedBefore(
  wanted: Iterable<string>,
  places: Relinking['places'],
  changes: Relinking['changes'],
): number {
  const changed = new Set(changes.map(({ picture }) => picture));
  return [...new Set(wanted)].filter(picture => places.has(picture) && !changed.has(picture)).length;
}

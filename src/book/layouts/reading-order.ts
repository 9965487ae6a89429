import { matcher } from '../discovery/globs';
import { asCounted } from '../order';

/** A layout source as it is read from top to bottom. */
interface Text<Item> {
  /** Relative to the root. */
  path: string;
  /** In the order of the text; `start`: where in it. */
  items: readonly (Item & { start: number })[];
  /** Other sources that it takes in, by path, in the order of the text. */
  includes: readonly { path: string; start: number }[];
}

/**
 * What stands in layout sources, as it comes when the book is read: source by source as the settings name them (`named`,
 * by each pattern as people count names; null: all by name), one that another takes in at the place where it is taken in,
 * each once. Pure, in linear time; sources that include each other in a ring are read from the first of them.
 */
export function inReadingOrder<Item, Source extends Text<Item>>(
  sources: readonly Source[],
  named: readonly string[] | null,
): { source: Source; item: Source['items'][number] }[] {
  const byPath = new Map(sources.map(source => [source.path, source]));
  const included = new Set(
    sources.flatMap(({ path, includes }) =>
      includes.flatMap(other => (other.path === path ? [] : other.path)),
    ),
  );
  const patterns = (named ?? []).map(pattern => matcher([pattern]));
  const rankOf = new Map(
    sources.map(({ path }) => {
      const rank = patterns.findIndex(names => names(path));
      // one that no pattern names is taken in by one that they do
      return [path, rank < 0 ? patterns.length : rank];
    }),
  );
  const sorted = [...sources].sort(
    (x, y) => rankOf.get(x.path)! - rankOf.get(y.path)! || asCounted(x.path, y.path),
  );
  const read = new Set<string>();
  const order: { source: Source; item: Source['items'][number] }[] = [];
  for (const first of [...sorted.filter(({ path }) => !included.has(path)), ...sorted]) {
    if (read.has(first.path)) continue;
    read.add(first.path);
    // a stack, not a recursion: a chain of includes may be long
    const open = [{ source: first, item: 0, include: 0 }];
    for (let at = open.at(-1); at; at = open.at(-1)) {
      const { source } = at;
      const item = source.items[at.item];
      const include = source.includes[at.include];
      if (item && (!include || item.start < include.start)) {
        order.push({ source, item });
        at.item++;
      } else if (include) {
        at.include++;
        const next = byPath.get(include.path);
        if (next && !read.has(next.path)) {
          read.add(next.path);
          open.push({ source: next, item: 0, include: 0 });
        }
      } else open.pop();
    }
  }
  return order;
}

import { matcher } from './discovery/globs';

/** Where a picture stands in the book. */
export interface Place {
  before: string | null;
  after: string | null;
  /** On the same spread, itself left out. */
  beside: string[];
}

/** The spreads of the settings by the paths that the book holds: they may be written as globs are. */
export function spreadsOf(spreads: readonly (readonly string[])[], paths: Iterable<string>): string[][] {
  const all = [...paths];
  const there = new Set(all);
  return spreads.map(names =>
    names.flatMap(name => {
      if (there.has(name)) return [name];
      return all.filter(matcher([name])).slice(0, 1);
    }),
  );
}

/**
 * The pictures of a book in its order: spreads as the settings list them; what no spread names follows the picture that
 * is before it by name, as people count (`2.tif` before `10.tif`), and that one's whole spread.
 */
export function inOrder(paths: Iterable<string>, spreads: readonly (readonly string[])[]): string[] {
  const byName = [...new Set(paths)].sort(asCounted);
  const all = new Set(byName);
  const groups = spreads.map(names => names.filter(name => all.has(name))).filter(names => names.length);
  const groupOf = new Map(groups.flatMap(group => group.map(name => [name, group] as const)));
  const first: string[] = [];
  let at = first;
  for (const name of byName) {
    const group = groupOf.get(name);
    if (group) at = group;
    else at.push(name);
  }
  return [...new Set([...first, ...groups.flat()])];
}

/** Finds the neighbours of pictures of a book. Those of another group, such as another part, are none. */
export function placesIn(
  paths: Iterable<string>,
  spreads: readonly (readonly string[])[],
  groupOf: (path: string) => string | null,
): (path: string) => Place {
  const order = inOrder(paths, spreads);
  const at = new Map(order.map((path, i) => [path, i]));
  const like = (path: string, next: string | undefined) =>
    next !== undefined && groupOf(next) === groupOf(path) ? next : null;
  return path => {
    const i = at.get(path);
    if (i === undefined) return { before: null, after: null, beside: [] };
    const spread = spreads.find(names => names.includes(path)) ?? [];
    return {
      before: like(path, order[i - 1]),
      after: like(path, order[i + 1]),
      beside: spread.filter(name => name !== path && at.has(name)),
    };
  };
}

/** Runs of digits by what they count, everything else by code unit: the same on every machine. */
function asCounted(x: string, y: string): number {
  const [xs, ys] = [x, y].map(name => name.split(/(\d+)/));
  for (let i = 0; i < Math.min(xs.length, ys.length); i++) {
    if (xs[i] === ys[i]) continue;
    const difference = i % 2 ? Number(xs[i]) - Number(ys[i]) : 0;
    if (difference) return difference;
    return xs[i] < ys[i] ? -1 : 1;
  }
  return xs.length - ys.length;
}

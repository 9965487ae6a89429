/** Where a picture stands in the book. */
export interface Place {
  before: string | null;
  after: string | null;
  /** On the same spread, itself left out. */
  beside: string[];
}

/**
 * The pictures of a book in its order: spreads as the settings list them, then what no spread names, by name as people
 * count (`2.tif` before `10.tif`).
 */
export function inOrder(paths: Iterable<string>, spreads: readonly (readonly string[])[]): string[] {
  const all = new Set(paths);
  const placed = new Set(spreads.flat().filter(path => all.has(path)));
  const others = [...all].filter(path => !placed.has(path)).sort(asCounted);
  return [...placed, ...others];
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

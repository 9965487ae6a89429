import type { BookPicture } from '../shared/finding';
import { matcher } from './discovery/globs';
import type { Placement } from './layouts';

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

/** The spread in which each picture stands: of several that name it the first. */
export function spreadsByPicture<Spread extends readonly string[]>(
  spreads: readonly Spread[],
): Map<string, Spread> {
  return new Map(spreads.toReversed().flatMap(spread => spread.map(name => [name, spread] as const)));
}

/** What says in which order a book has its pictures. */
export interface Arrangement {
  /** Pictures that face each other, by their paths: those of `spreadsOf`. */
  spreads: readonly (readonly string[])[];
  /** Where layouts place pictures, by their path, in the order of the layouts. */
  placements: ReadonlyMap<string, readonly Pick<Placement, 'inStyleSheet'>[]>;
}

/**
 * The pictures of a book in its order: that of the spreads in the settings, else that in which layouts place them, each
 * where it comes first. What no spread names follows the picture that is before it in the layouts, and that one's whole
 * spread; what no layout places comes last, by name, as people count (`2.tif` before `10.tif`). Where layouts place
 * nothing, names stand for them.
 */
export function inOrder(paths: Iterable<string>, { spreads, placements }: Arrangement): string[] {
  const byName = [...new Set(paths)].sort(asCounted);
  const all = new Set(byName);
  const groups = spreads.map(names => names.filter(name => all.has(name))).filter(names => names.length);
  const groupOf = spreadsByPicture(groups);
  const placed = placedFirst(placements).filter(name => all.has(name));
  const first: string[] = [];
  let at = first;
  for (const name of placed.length ? placed : byName) {
    const group = groupOf.get(name);
    if (group) at = group;
    else at.push(name);
  }
  return [...new Set([...first, ...groups.flat(), ...byName])];
}

/** The same as each picture's place, from 1; of none that only its name puts where it is. */
export function positionsIn(paths: Iterable<string>, arrangement: Arrangement): Map<string, number> {
  const order = inOrder(paths, arrangement);
  const inLayouts = new Set(placedFirst(arrangement.placements));
  const inSpreads = new Set(arrangement.spreads.flat());
  const laidOut = order.some(path => inLayouts.has(path));
  const arranged = order.some(path => inSpreads.has(path));
  const stands = (path: string) => inSpreads.has(path) || (laidOut ? inLayouts.has(path) : arranged);
  return new Map(order.flatMap((path, i) => (stands(path) ? [[path, i + 1] as const] : [])));
}

/** The pages of a report in the order of the book, those of a file in turn. */
export const pagesInOrder = <Page extends Pick<BookPicture, 'path' | 'position'>>(
  pages: readonly Page[],
): Page[] => {
  const at = ({ position }: Page) => position ?? Number.MAX_SAFE_INTEGER;
  return [...pages].sort((x, y) => at(x) - at(y) || asCounted(x.path, y.path));
};

/** Indices of pictures in the book's order, those of one spread together; the pages of a file follow each other. */
export function facing(
  pictures: readonly Pick<BookPicture, 'path' | 'position'>[],
  spreads: readonly (readonly string[])[],
): number[][] {
  const pages = new Map<string, number[]>();
  for (const [i, { path }] of pictures.entries()) {
    const others = pages.get(path);
    if (others) others.push(i);
    else pages.set(path, [i]);
  }
  const spreadOf = spreadsByPicture(spreads);
  const groups: number[][] = [];
  let before: readonly string[] | undefined;
  for (const path of new Set(pagesInOrder(pictures).map(({ path }) => path))) {
    const spread = spreadOf.get(path);
    if (spread && spread === before) groups[groups.length - 1].push(...pages.get(path)!);
    else groups.push([...pages.get(path)!]);
    before = spread;
  }
  return groups;
}

const placedFirst = (placements: Arrangement['placements']): string[] =>
  [...placements].flatMap(([path, places]) => (places.some(({ inStyleSheet }) => !inStyleSheet) ? path : []));

/** Finds the neighbours of pictures of a book. Those of another group, such as another part, are none. */
export function placesIn(
  paths: Iterable<string>,
  arrangement: Arrangement,
  groupOf: (path: string) => string | null,
): (path: string) => Place {
  const order = inOrder(paths, arrangement);
  const at = new Map(order.map((path, i) => [path, i]));
  const like = (path: string, next: string | undefined) =>
    next !== undefined && groupOf(next) === groupOf(path) ? next : null;
  return path => {
    const i = at.get(path);
    if (i === undefined) return { before: null, after: null, beside: [] };
    const spread = arrangement.spreads.find(names => names.includes(path)) ?? [];
    return {
      before: like(path, order[i - 1]),
      after: like(path, order[i + 1]),
      beside: spread.filter(name => name !== path && at.has(name)),
    };
  };
}

/** Runs of digits by what they count, everything else by code unit: the same on every machine. */
export function asCounted(x: string, y: string): number {
  const [xs, ys] = [x, y].map(name => name.split(/(\d+)/));
  for (let i = 0; i < Math.min(xs.length, ys.length); i++) {
    if (xs[i] === ys[i]) continue;
    const difference = i % 2 ? Number(xs[i]) - Number(ys[i]) : 0;
    if (difference) return difference;
    return xs[i] < ys[i] ? -1 : 1;
  }
  return xs.length - ys.length;
}

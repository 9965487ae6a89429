import type { Rearranged, Stand } from '../../shared/comparison';
import { inOrder, spreadsByPicture, spreadsOf } from '../order';
import type { PageOf } from './page-changes';
import type { Side } from './side';

type Arranged = Pick<Side, 'settings' | 'pages' | 'placements'>;

/**
 * Pictures that are the same under the same name and stand elsewhere: beside others on their spread, or in another order.
 * Of an order the fewest are told that, put back, give what was before; what only made room for others has not moved.
 */
export function rearranged(base: Arranged, head: Arranged, pages: readonly PageOf[]): Rearranged[] {
  const was = standsIn(base, calledNow(pages));
  const is = standsIn(head, path => path);
  const touched = new Set(pages.filter(({ kind }) => kind !== 'mode').map(({ path }) => path));
  const kept = is.order.filter(path => was.stands.has(path) && !touched.has(path));
  const place = new Map(was.order.map((path, at) => [path, at]));
  const stayed = longestRising(kept, path => place.get(path)!);
  const places = (layout: string | null) =>
    layout !== null && was.layouts.has(layout) && is.layouts.has(layout);
  return kept.flatMap(path => {
    const [before, after] = [was.stands.get(path)!, is.stands.get(path)!];
    // a layout that is called otherwise moves nothing
    const elsewhere = before.layout !== after.layout && places(before.layout) && places(after.layout);
    const moved = !sameSet(before.facing, after.facing) || !stayed.has(path) || elsewhere;
    return moved ? [{ path, before, after }] : [];
  });
}

/** Beside which pictures one stood on its spread, by its name then; these are called as they are now. */
export function facedBefore(base: Arranged, pages: readonly PageOf[]): (path: string) => string[] {
  const now = calledNow(pages);
  const spreadOf = spreadsByPicture(spreadsOf(base.settings.spreads, base.pages.keys()));
  return path =>
    (base.pages.has(path) ? (spreadOf.get(path) ?? []) : [])
      .filter(name => name !== path && base.pages.has(name))
      .map(name => now(name));
}

/** What a picture was called, as it is called now. */
export function calledNow(pages: readonly Pick<PageOf, 'path' | 'from'>[]): (path: string) => string {
  const called = new Map(pages.flatMap(({ path, from }) => (from === null ? [] : [[from, path] as const])));
  return path => called.get(path) ?? path;
}

interface Stands {
  order: string[];
  stands: Map<string, Stand>;
  /** That place any of them. */
  layouts: Set<string | null>;
}

function standsIn({ settings, pages, placements }: Arranged, calledNow: (path: string) => string): Stands {
  const spreads = spreadsOf(settings.spreads, pages.keys());
  const spreadOf = spreadsByPicture(spreads);
  const order = inOrder(pages.keys(), { spreads, placements });
  const stands = new Map<string, Stand>();
  for (const [at, path] of order.entries()) {
    const facing = (spreadOf.get(path) ?? []).filter(name => name !== path && pages.has(name));
    stands.set(calledNow(path), {
      facing: facing.map(calledNow),
      after: at ? calledNow(order[at - 1]) : null,
      layout: placements.get(path)?.[0].file ?? null,
    });
  }
  const layouts = new Set([...stands.values()].map(({ layout }) => layout));
  return { order: order.map(calledNow), stands, layouts };
}

/** The longest run, not without gaps, whose ranks rise: by the smallest end that a run of each length can have. */
function longestRising(paths: readonly string[], rankOf: (path: string) => number): Set<string> {
  const ends: string[] = [];
  const before = new Map<string, string | undefined>();
  for (const path of paths) {
    const rank = rankOf(path);
    let at = 0;
    for (let end = ends.length; at < end; ) {
      const middle = (at + end) >> 1;
      if (rankOf(ends[middle]) < rank) at = middle + 1;
      else end = middle;
    }
    before.set(path, ends[at - 1]);
    ends[at] = path;
  }
  const run = new Set<string>();
  for (let path = ends.at(-1); path !== undefined; path = before.get(path)) run.add(path);
  return run;
}

const sameSet = (x: readonly string[], y: readonly string[]): boolean =>
  x.length === y.length && x.every(name => y.includes(name));

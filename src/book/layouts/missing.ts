// no-unit-test: test/book/layouts/index.test.ts reads books with pictures that are missing
import type { Reference, Resolution } from '../../layout';

interface Placed {
  reference: Reference;
  found: Resolution;
}

type Missing = Extract<Resolution, { kind: 'missing' }>;

/**
 * Pictures that are missing, each under one path: where several lines look for one file in the same place, be it among
 * others, it is that place which most of them share. Changes `found` of each; near-linear time.
 */
export function joinMissing(sources: readonly { placed: Placed[] }[]): void {
  const all = sources.flatMap(({ placed }) => placed.filter(({ found }) => found.kind === 'missing'));
  const groups = new Map<string, Set<Placed>>();
  for (const one of all) {
    let group = new Set([one]);
    for (const place of (one.found as Missing).places) {
      const other = groups.get(place);
      if (!other || other === group) continue;
      const [small, large] = other.size < group.size ? [other, group] : [group, other];
      for (const joined of small) {
        large.add(joined);
        for (const shared of (joined.found as Missing).places) groups.set(shared, large);
      }
      group = large;
    }
    for (const place of (one.found as Missing).places) groups.set(place, group);
  }
  for (const group of new Set(groups.values())) {
    const path = mostShared([...group].map(({ found }) => found as Missing));
    for (const one of group) one.found = { ...(one.found as Missing), path };
  }
}

/** Where as many lines as can be expect it first, or look for it at all. */
function mostShared(all: readonly Missing[]): string {
  const votes = new Map<string, number>();
  for (const { path, places } of all) {
    votes.set(path, (votes.get(path) ?? 0) + 0.5);
    for (const place of new Set(places)) votes.set(place, (votes.get(place) ?? 0) + 1);
  }
  return [...votes].reduce((best, other) => (other[1] > best[1] ? other : best))[0];
}

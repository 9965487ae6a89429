// no-unit-test: test/book/comparison/compare-pairs.test.ts compares books through it
import type { Finding, PictureReport } from '../../shared/finding';
import { partnerKey } from '../partner';

/** What a finding of before says, its partner called as it is now; null where it says that already. */
export function partnerCalledNow(
  data: Finding['data'],
  calledNow: (path: string) => string,
): Finding['data'] | null {
  const key = partnerKey({ data });
  const [was, is] = key ? [data[key], calledNow(data[key] as string)] : [];
  return key && was !== is ? { ...data, [key]: is } : null;
}

/**
 * What was said of either of two pictures, by the picture that it is said of now: which of them has the finding hangs on the
 * order of the book, and the pair is what it was. Partners are called as they are now. `turned`: what such a finding was.
 */
export function saidOfPairs(
  before: readonly PictureReport[],
  after: readonly PictureReport[],
  calledNow: (path: string) => string,
): { said: ReadonlyMap<PictureReport, Finding[]>; turned: ReadonlyMap<Finding, Finding> } {
  const bearers = new Map<string | null, string>();
  for (const { path, findings, waived = [] } of after)
    for (const finding of [...findings, ...waived]) bearers.set(pairOf(finding, path), path);
  bearers.delete(null);
  const said = new Map(before.map(picture => [picture, [] as Finding[]]));
  const turned = new Map<Finding, Finding>();
  const firstPages = new Map(before.toReversed().map(picture => [calledNow(picture.path), picture]));
  for (const picture of before)
    for (const finding of picture.findings) {
      const path = calledNow(picture.path);
      const bearer = bearers.get(pairOf(finding, path));
      const other = bearer === undefined || bearer === path ? undefined : firstPages.get(bearer);
      const key = partnerKey(finding);
      if (!other || !key) {
        said.get(picture)!.push(finding);
        continue;
      }
      const now = { ...finding, data: { ...finding.data, [key]: path } };
      turned.set(now, finding);
      said.get(other)!.push(now);
    }
  return { said, turned };
}

/** By what the finding of a pair is known, whichever of the two has it. */
function pairOf({ rule, data }: Finding, path: string): string | null {
  const key = partnerKey({ data });
  return key ? JSON.stringify([rule, data.target ?? null, [path, data[key]].sort()]) : null;
}

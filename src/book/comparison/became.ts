// no-unit-test: test/book/comparison/compare-counts.test.ts and compare-settings.test.ts compare books through it
import type { FindingChanges, PictureFindings } from '../../shared/comparison';
import type { Finding, PictureReport } from '../../shared/finding';
import { changesOf, claimsOn, isOfBook, waivedOn } from '../revisions/claims';
import { pairedTargets } from '../revisions/settings-changes';
import type { Side } from '../revisions/side';
import type { Split } from '../waivers/apply';
import { saidOfPairs } from './pairs';
import { regraded } from './regrade';

/** What became of what a check of the base says. */
export interface Became {
  /** Of a page; before it may have been a picture, and a place of that name that was blank. */
  of(was: readonly PictureReport[], is: PictureReport | null): PictureFindings;
  /** Of the book as a whole. */
  book: FindingChanges;
  /** What could be compared of the findings about the book before. */
  shared: Finding[];
  /** What could not: findings about the book before of which nobody knows whether they stand. */
  open: ReadonlySet<Finding>;
  /** Every finding before, as often as it is said of a picture, or once where it is of the book. */
  said: Finding[];
  /** Whether the settings have it count for more or less since. */
  isRegraded(before: Finding): boolean;
}

/** Compares by what rules count for since; what ended is told as it counted then. */
export function becameOf(
  before: Split,
  after: Split,
  {
    base,
    head,
    unread,
    calledNow,
  }: Record<'base' | 'head', Pick<Side, 'settings'>> & {
    unread: number;
    calledNow: (path: string) => string;
  },
): Became {
  const rules = { was: base.settings.rules, is: head.settings.rules };
  const called = pairedTargets(base.settings.targets, head.settings.targets).flatMap(([was, is]) =>
    was.name === is.name ? [] : ([[was.name, is.name]] as const),
  );
  const graded = regraded(before, after, rules, new Map(called), calledNow);
  const was = graded.before;
  const pairs = saidOfPairs(was.pictures, after.pictures, calledNow);
  const asItWas = (finding: Finding) => {
    const then = pairs.turned.get(finding) ?? finding;
    return graded.was.get(then) ?? then;
  };
  const otherwise = new Set(
    [...graded.was].flatMap(([now, then]) => (now.severity === then.severity ? [] : then)),
  );
  const changes = (...compared: Parameters<typeof changesOf>): PictureFindings => {
    const found = changesOf(...compared);
    return { ...found, ended: found.ended.map(asItWas) };
  };
  const now = after.findings.filter(isOfBook);
  const open = new Set(unread ? changesOf(was.findings.filter(isOfBook), now).ended : []);
  // where others were not looked at, nobody knows whether what was said of the book has ended: it may stand for these
  const shared = was.findings.filter(finding => !open.has(finding));
  const restated = new Map(
    before.pictures.map((picture, at) => {
      const now = was.pictures[at];
      return [picture, { ...now, findings: pairs.said.get(now)! }];
    }),
  );
  const claims = (picture: PictureReport) => claimsOn(restated.get(picture)!, shared);
  return {
    of: (x, y) =>
      changes(x.flatMap(claims), y ? claimsOn(y, after.findings) : [], {
        waivedSince: y ? waivedOn(y, after) : [],
      }),
    book: changes(shared.filter(isOfBook), now, { waivedSince: after.waived.filter(isOfBook) }),
    shared: shared.map(asItWas),
    open: new Set([...open].map(asItWas)),
    isRegraded: finding => otherwise.has(finding),
    said: [...before.pictures.flatMap(claims), ...shared.filter(isOfBook)].map(asItWas),
  };
}

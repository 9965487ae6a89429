import type {
  Comparison,
  FindingChanges,
  PageChange,
  PictureChange,
  SettingsClause,
  SeverityCounts,
} from '../../../src/shared/comparison';
import type { Finding, PictureReport } from '../../../src/shared/finding';
import { brokenFacts } from '../../book/support/facts';
import { picture, target } from '../text/support';

const revision = (asked: string | null, digit: string) => ({
  asked,
  commit: digit.repeat(40),
  folder: false,
  targets: [target],
  pictures: 9,
  findings: [],
  grounds: { [target.name]: [GROUND] },
});

/** What forecasts rest on, as a revision tells it. */
export const GROUND = 'by a record of ours';

export const findings = (change: Partial<FindingChanges> = {}): FindingChanges => ({
  ...{ new: [], ended: [], unchanged: [] },
  ...change,
});

/** What changed, as the settings themselves have it where nothing else is said. */
export const clause = (words: string, of: SettingsClause['of'] = 'settings'): SettingsClause => ({
  of,
  words,
});

export const page = (
  before: PictureReport | null,
  after: PictureReport | null,
  change: Partial<PageChange> = {},
): PageChange => ({
  ...{ page: 1, before, after, samePixels: null, findings: findings(), waived: [], matches: [] },
  ...change,
});

export const change = (
  kind: PictureChange['kind'],
  path: string,
  pages: PageChange[],
  more: Partial<PictureChange> = {},
): PictureChange => ({
  ...{
    kind,
    path,
    pages,
    from: null,
    swapped: false,
    modes: null,
    bytes: null,
    neighbours: { before: null, after: null, beside: [] },
    faced: [],
    still: null,
  },
  ...more,
});

/** A comparison of these changes, counted. */
export function comparison(changes: PictureChange[], more: Partial<Comparison> = {}): Comparison {
  const book = more.book ?? findings();
  const counts = (which: keyof FindingChanges) => {
    const all: Finding[] = [
      ...book[which],
      ...changes.flatMap(({ pages }) => pages.flatMap(of => of.findings[which])),
    ];
    const count = (severity: Finding['severity']) => all.filter(f => f.severity === severity).length;
    return { errors: count('error'), warnings: count('warning'), notes: count('note') };
  };
  const kinds = { added: 0, deleted: 0, changed: 0, renamed: 0, moved: 0, mode: 0 };
  for (const { kind } of changes) kinds[kind]++;
  return {
    base: revision('main', 'a'),
    head: revision(null, 'b'),
    ...{
      mergeBase: false,
      scope: 'book',
      unread: 0,
      beyond: [],
      changes,
      others: [],
      advice: [],
      book,
      notices: [],
    },
    settings: { changes: [], forecasts: [] },
    rearranged: [],
    waived: [],
    summary: {
      ...{ changes: kinds, new: counts('new'), ended: counts('ended'), unchanged: counts('unchanged') },
      base: sumOf(counts('ended'), counts('unchanged')),
      regraded: 0,
    },
    ...more,
  };
}

const sumOf = (x: SeverityCounts, y: SeverityCounts): SeverityCounts => ({
  errors: x.errors + y.errors,
  warnings: x.warnings + y.warnings,
  notes: x.notes + y.notes,
});

/** A picture that a layout places and that is not there. */
export const blank = (path: string): PictureReport => ({
  ...picture(path, [], brokenFacts('missing')),
  placedAt: [{ file: 'book.md', line: 1, column: 1 }],
});

// no-unit-test: test/book/revisions/compare.test.ts compares books through it
import type {
  ChangeKind,
  ComparedRevision,
  Comparison,
  FindingChanges,
  OtherChange,
  PageChange,
  PictureChange,
  SeverityCounts,
} from '../../shared/comparison';
import type { Finding, PictureReport } from '../../shared/finding';
import type { JudgedBook } from '../judge-book';
import { placesIn, spreadsOf } from '../order';
import type { Split } from '../waivers/apply';
import { changesOf, claimsOn, isOfBook } from './claims';
import { matcherOf } from './match';
import type { PageOf } from './page-changes';
import { rearranged } from './rearranged';
import type { Side } from './side';

/** What was found out of both sides. */
export interface Joining {
  base: ComparedRevision;
  head: ComparedRevision;
  mergeBase: boolean;
  sides: { base: Side; head: Side };
  judged: { before: Split; after: Split };
  pages: PageOf[];
  unread: number;
  settings: Comparison['settings'];
  notices: string[];
}

/** Puts both sides beside each other: changes with their findings, what became of the others, and of the set. */
export function joined({
  base,
  head,
  mergeBase,
  sides,
  judged,
  pages,
  unread,
  settings,
  notices,
}: Joining): Comparison {
  const { before, after } = judged;
  const moved = new Set(pages.filter(({ kind }) => kind !== 'mode').map(({ path }) => path));
  const unchanged = after.pictures.filter(({ path }) => !moved.has(path));
  const match = matcherOf(unread ? null : { unchanged, all: after.pictures });
  const parts = new Map(after.pictures.map(({ path, part }) => [path, part]));
  const { spreads } = sides.head.settings;
  const place = placesIn(
    sides.head.pages.keys(),
    spreadsOf(spreads, sides.head.pages.keys()),
    path => parts.get(path) ?? null,
  );
  const changes = pages.map(({ kind, path, from, before: was, after: is }): PictureChange => {
    const modes = was && is && was.mode !== is.mode ? { before: was.mode, after: is.mode } : null;
    const pagesBefore = kind === 'mode' ? [] : pagesAt(before, from ?? path);
    const pagesAfter = kind === 'mode' ? [] : pagesAt(after, path);
    const numbers = [...new Set([...pagesBefore, ...pagesAfter].map(({ facts }) => facts.page))];
    return {
      ...{ kind, path, from, modes, neighbours: place(path) },
      pages: numbers
        .sort((x, y) => x - y)
        .map((page): PageChange => {
          const [x, y] = [pagesBefore, pagesAfter].map(
            list => list.find(({ facts }) => facts.page === page) ?? null,
          );
          const claims = y ? claimsOn(y, after.findings) : [];
          return {
            page,
            before: x,
            after: y,
            findings: changesOf(x ? claimsOn(x, before.findings) : [], claims, y?.waived),
            matches: y ? match(y, claims) : [],
          };
        }),
    };
  });
  const others = otherChanges(before, after, moved);
  const book = changesOf(before.findings.filter(isOfBook), after.findings.filter(isOfBook), after.waived);
  const all = [...changes.flatMap(({ pages }) => pages.map(({ findings }) => findings)), book];
  const counted = (which: keyof FindingChanges) =>
    countsOf([
      ...all.flatMap(findings => findings[which]),
      ...(which === 'unchanged' ? [] : others.flatMap(({ findings }) => findings[which])),
    ]);
  const kinds = ['added', 'deleted', 'changed', 'renamed', 'moved', 'mode'] as const;
  return {
    ...{ base, head, mergeBase, changes, others, settings, book, notices },
    rearranged: rearranged(sides.base, sides.head, pages),
    scope: unread ? 'changes' : 'book',
    unread,
    summary: {
      changes: Object.fromEntries(
        kinds.map(kind => [kind, changes.filter(change => change.kind === kind).length]),
      ) as Record<ChangeKind, number>,
      new: counted('new'),
      ended: counted('ended'),
      unchanged: counted('unchanged'),
    },
  };
}

/** Also of a picture that a layout places and that is not there. */
const pagesAt = (judged: JudgedBook, path: string): PictureReport[] =>
  judged.pictures.filter(picture => picture.path === path);

/** Pictures that stayed as they were, with what is said of them now and was not before. Notes about them are no news. */
function otherChanges(before: JudgedBook, after: JudgedBook, moved: ReadonlySet<string>): OtherChange[] {
  const key = ({ path, facts }: PictureReport) => `${facts.page} ${path}`;
  const was = new Map(before.pictures.map(picture => [key(picture), picture]));
  return after.pictures.flatMap(picture => {
    const same = moved.has(picture.path) ? undefined : was.get(key(picture));
    if (!same) return [];
    const loud = (findings: Finding[]) => findings.filter(({ severity }) => severity !== 'note');
    const found = changesOf(
      loud(claimsOn(same, before.findings)),
      loud(claimsOn(picture, after.findings)),
      picture.waived,
    );
    if (!found.new.length && !found.ended.length) return [];
    return [
      { path: picture.path, page: picture.facts.page, findings: { new: found.new, ended: found.ended } },
    ];
  });
}

function countsOf(findings: readonly Finding[]): SeverityCounts {
  const count = (severity: Finding['severity']) => findings.filter(f => f.severity === severity).length;
  return { errors: count('error'), warnings: count('warning'), notes: count('note') };
}

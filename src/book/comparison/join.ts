// no-unit-test: test/book/comparison/compare.test.ts compares books through it
import { LONGEST_POINTER } from '../../picture/header/pointer';
import type {
  ChangeKind,
  ComparedRevision,
  Comparison,
  OtherChange,
  PageChange,
  PictureChange,
} from '../../shared/comparison';
import type { Finding, PictureReport, Slip } from '../../shared/finding';
import type { JudgedBook } from '../judge-book';
import { placesIn, spreadsOf } from '../order';
import { matchClaims, namedIn, waivedOn } from '../revisions/claims';
import type { PageOf } from '../revisions/page-changes';
import { calledNow, facedBefore, rearranged } from '../revisions/rearranged';
import type { Side } from '../revisions/side';
import type { Split } from '../waivers/apply';
import { advisedOtherwise } from './advised';
import { type Became, becameOf } from './became';
import { matcherOf } from './match';
import { narrowedToEnded, narrowedToNew } from './narrowed';
import type { PixelsAlike } from './pixels';
import { countsOf, newIn, tally } from './tally';
import type { Still } from './unlooked';

/** What was found out of both sides. */
export interface Joining {
  base: ComparedRevision;
  head: ComparedRevision;
  isFirst: boolean;
  mergeBase: boolean;
  sides: { base: Side; head: Side };
  still: Still;
  judged: { before: Split; after: Split };
  pages: PageOf[];
  alike: PixelsAlike;
  /** Of contents, by what git calls them. */
  sizes: ReadonlyMap<string, number>;
  unread: number;
  beyond: string[];
  waived: Comparison['waived'];
  settings: Comparison['settings'];
  notices: string[];
  slips: Slip[];
  unlooked: NonNullable<Comparison['unlooked']>;
}

/** Puts both sides beside each other: changes with their findings, what became of the others, and of the set. */
export function joined({
  base,
  head,
  isFirst,
  mergeBase,
  sides,
  still,
  judged,
  pages,
  alike,
  sizes,
  unread,
  beyond,
  waived,
  settings,
  notices,
  slips,
  unlooked,
}: Joining): Comparison {
  const { after } = judged;
  const before = withoutUnseen(judged.before, pages);
  const became = becameOf(before, after, { ...sides, unread, calledNow: calledNow(pages) });
  const moved = new Set(pages.filter(({ kind }) => kind !== 'mode').map(({ path }) => path));
  const match = matcherOf(unread ? null : after.pictures);
  const parts = new Map(after.pictures.map(({ path, part }) => [path, part]));
  const { spreads } = sides.head.settings;
  const place = placesIn(
    sides.head.pages.keys(),
    { spreads: spreadsOf(spreads, sides.head.pages.keys()), placements: sides.head.placements },
    path => parts.get(path) ?? null,
  );
  const faced = facedBefore(sides.base, pages);
  const renamed = new Set(pages.flatMap(({ from }) => from ?? []));
  const changes = pages.map((change): PictureChange => {
    const { kind, path, from, swapped, before: was, after: is } = change;
    const modes = was && is && was.mode !== is.mode ? { before: was.mode, after: is.mode } : null;
    const pagesBefore =
      kind === 'mode' ? [] : namesBefore(change, renamed).flatMap(name => pagesAt(before, name));
    const pagesAfter = kind === 'mode' ? [] : pagesAt(after, path);
    // what cannot be read any more, or is left out of the check, was not put right
    const isLost = pagesAfter.some(({ facts }) => facts.unreadable);
    const whyOut = kind === 'deleted' ? still(path) : null;
    const numbers = [...new Set([...pagesBefore, ...pagesAfter].map(({ facts }) => facts.page))];
    return {
      ...{ kind, path, from, swapped, modes, bytes: bytesOf(was, is, sizes), neighbours: place(path) },
      faced: faced(from ?? path),
      still: whyOut,
      pages: numbers
        .sort((x, y) => x - y)
        .map((page): PageChange => {
          const [all, [y = null]] = [pagesBefore, pagesAfter].map(list =>
            list.filter(({ facts }) => facts.page === page),
          );
          const [x = null] = all;
          const findings = became.of(all, y);
          return {
            page,
            before: x,
            after: y,
            samePixels: was && was.oid === is?.oid ? true : (alike.get(change)?.get(page) ?? null),
            findings: {
              ...findings,
              ended: (isLost && !x?.facts.unreadable) || whyOut === 'left-out' ? [] : findings.ended,
            },
            waived: y ? waivedOn(y, after) : [],
            matches: y ? match(y, matchClaims(y, after.findings), waivedOn(y, after, matchClaims)) : [],
          };
        }),
    };
  });
  const others = otherChanges(before, after, moved, became.of);
  const onPictures = [
    ...changes.flatMap(({ path, from, pages }) =>
      pages.map(({ findings }) => ({ path, was: from ?? path, findings })),
    ),
    ...others.map(({ path, findings }) => ({ path, was: path, findings })),
  ];
  const told = [...onPictures.map(({ findings }) => findings), became.book];
  const fresh = newIn(told);
  const book = { ...became.book, unchanged: after.findings.filter(finding => !fresh.has(finding)) };
  const summed = {
    ...tally({ ...before, findings: became.shared }, after, { told, ...became }),
    base: countsOf({
      ...judged.before,
      findings: judged.before.findings.filter(finding => !became.open.has(finding)),
    }),
  };
  narrow(onPictures, became.shared, after.findings);
  const kinds = ['added', 'deleted', 'changed', 'renamed', 'moved', 'mode'] as const;
  return {
    ...{ base, head, mergeBase, changes, settings, waived, book, notices },
    ...(isFirst && { isFirst }),
    ...(slips.length && { slips }),
    ...(Object.values(unlooked).some(({ length }) => length) && { unlooked }),
    advice: advisedOtherwise(changes, others),
    others: others.filter(({ findings }) => findings.new.length || findings.ended.length),
    rearranged: rearranged(sides.base, sides.head, pages),
    scope: unread ? 'changes' : 'book',
    unread,
    beyond,
    summary: {
      changes: Object.fromEntries(
        kinds.map(kind => [kind, changes.filter(change => change.kind === kind).length]),
      ) as Record<ChangeKind, number>,
      ...summed,
    },
  };
}

/** What is new, or ended, for some of the pictures that a finding names is told of these. */
function narrow(
  onPictures: readonly { path: string; was: string; findings: OtherChange['findings'] }[],
  before: readonly Finding[],
  after: readonly Finding[],
): void {
  const fresh = narrowedToNew(
    after,
    onPictures.map(({ path, findings }) => ({ path, findings: findings.new })),
  );
  const ended = narrowedToEnded(
    before,
    onPictures.map(({ was, findings }) => ({ path: was, findings: findings.ended })),
  );
  for (const { findings } of onPictures) {
    findings.new = findings.new.map(finding => fresh.get(finding) ?? finding);
    findings.ended = findings.ended.map(finding => ended.get(finding) ?? finding);
  }
}

/** What is smaller may be a pointer, and says nothing of its picture. */
function bytesOf(
  was: PageOf['before'],
  is: PageOf['after'],
  sizes: ReadonlyMap<string, number>,
): PictureChange['bytes'] {
  const [before, after] = [was, is].map(entry => (entry && sizes.get(entry.oid)) ?? 0);
  return before < LONGEST_POINTER || after < LONGEST_POINTER ? null : { before, after };
}

/**
 * That a content was not fetched says something of this clone and nothing of the picture: of one that is another now, or
 * gone, it was nothing that stood before, so that it has not ended, nor is what stands against the new one as before.
 */
function withoutUnseen(before: Split, pages: readonly PageOf[]): Split {
  const others = new Set(
    pages.flatMap(({ path, from, before: was, after: is }) => (was?.oid === is?.oid ? [] : (from ?? path))),
  );
  const kept = (findings: readonly Finding[], named: (finding: Finding) => readonly unknown[]) =>
    findings.flatMap(finding => {
      if (finding.rule !== 'not-fetched') return finding;
      const pictures = named(finding).filter(path => !others.has(path as string));
      return pictures.length ? { ...finding, data: { ...finding.data, pictures } } : [];
    });
  return {
    ...before,
    pictures: before.pictures.map(picture =>
      others.has(picture.path) ? { ...picture, findings: kept(picture.findings, () => []) } : picture,
    ),
    findings: kept(before.findings, namedIn),
  };
}

/**
 * What a change tells of was called so before: a picture, and a place of that name that was blank until it was renamed into
 * it. What is told of a picture under its name now is told of no other that a layout still places under the old one.
 */
const namesBefore = ({ path, from }: PageOf, renamed: ReadonlySet<string>): string[] => [
  ...(from === null ? [] : [from]),
  ...(renamed.has(path) ? [] : [path]),
];

/** Also of a picture that a layout places and that is not there. */
const pagesAt = (judged: JudgedBook, path: string): PictureReport[] =>
  judged.pictures.filter(picture => picture.path === path);

/** Pictures that stayed as they were, with what is said of them now and was not before, and what is said no more. */
function otherChanges(
  before: Split,
  after: Split,
  moved: ReadonlySet<string>,
  became: Became['of'],
): OtherChange[] {
  const key = ({ path, facts }: PictureReport) => `${facts.page} ${path}`;
  const was = new Map(before.pictures.map(picture => [key(picture), picture]));
  return after.pictures.flatMap(picture => {
    const same = moved.has(picture.path) ? undefined : was.get(key(picture));
    if (!same) return [];
    const findings = became([same], picture);
    const wereWaived = new Set(waivedOn(same, before).map(({ rule }) => rule));
    const lapsed = findings.new.flatMap(({ rule }) => (wereWaived.has(rule) ? rule : []));
    return [{ path: picture.path, page: picture.facts.page, findings, ...(lapsed.length && { lapsed }) }];
  });
}

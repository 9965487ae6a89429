// no-unit-test: test/book/revisions/compare.test.ts compares books of every kind of change
import type { ChangeKind } from '../../shared/comparison';
import type { Change } from './changes';
import type { Side } from './side';

/** A change of a picture, seen from the book: what is no picture of it on one side is not there on that side. */
export interface PageOf extends Pick<Change, 'path' | 'from' | 'before' | 'after'> {
  kind: ChangeKind;
}

/** What changed in the book, by path: also what the settings alone let in or out. */
export function pageChanges(changes: readonly Change[], base: Side, head: Side): PageOf[] {
  const pages: PageOf[] = [];
  const add = (path: string, from: string | null) => {
    const before = base.pages.get(from ?? path) ?? null;
    const after = head.pages.get(path) ?? null;
    if (before && after) pages.push({ path, from, before, after, kind: kindOf(from, before, after) });
    else if (after) pages.push({ path, from: null, before, after, kind: 'added' });
    else if (before) pages.push({ path: from ?? path, from: null, before, after, kind: 'deleted' });
  };
  for (const { path, from } of changes) add(path, from);
  // let in or out by the settings alone
  const told = new Set(changes.flatMap(({ path, from }) => [path, from ?? path]));
  for (const path of new Set([...base.pages.keys(), ...head.pages.keys()]))
    if (!told.has(path) && base.pages.has(path) !== head.pages.has(path)) add(path, null);
  // placed by a layout that was changed, and never there
  const before = new Set(base.missing.map(({ path }) => path));
  const known = new Set(pages.map(({ path }) => path));
  for (const { path } of head.missing)
    if (!before.has(path) && !known.has(path))
      pages.push({ path, from: null, before: null, after: null, kind: 'added' });
  return pages.sort((x, y) => (x.path < y.path ? -1 : 1));
}

function kindOf(from: string | null, before: { oid: string }, after: { oid: string }): ChangeKind {
  const same = before.oid === after.oid;
  if (from !== null) return same ? 'renamed' : 'moved';
  return same ? 'mode' : 'changed';
}

/** Nothing of a picture is read because somebody made it executable. */
export const oidsToRead = ({ kind, before, after }: PageOf): string[] =>
  kind === 'mode' ? [] : [before, after].flatMap(entry => entry?.oid ?? []);

/** Pictures whose content and name are the same on both sides. */
export function unchangedPages(base: Side, head: Side, changes: readonly PageOf[]) {
  const changed = new Set(changes.filter(({ kind }) => kind !== 'mode').map(({ path }) => path));
  return [...head.pages].filter(([path]) => base.pages.has(path) && !changed.has(path));
}

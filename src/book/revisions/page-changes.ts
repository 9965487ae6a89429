// no-unit-test: test/book/comparison/compare.test.ts compares books of every kind of change
import type { ChangeKind } from '../../shared/comparison';
import type { Change } from '../git/changes';
import type { NamedContent } from './read';
import type { Side } from './side';

/** A change of a picture, seen from the book: what is no picture of it on one side is not there on that side. */
export interface PageOf extends Pick<Change, 'path' | 'from' | 'before' | 'after'> {
  kind: ChangeKind;
  /** Took another's name while that took its, or one's in a ring of them. */
  swapped: boolean;
}

/** What changed in the book, by path: also what the settings alone let in or out, and links to what changed. */
export function pageChanges(changes: readonly Change[], base: Side, head: Side): PageOf[] {
  const pages: PageOf[] = [];
  const push = (page: Omit<PageOf, 'swapped'>) => pages.push({ ...page, swapped: false });
  const add = (path: string, from: string | null) => {
    const before = base.pages.get(from ?? path) ?? null;
    const after = head.pages.get(path) ?? null;
    if (before && after) push({ path, from, before, after, kind: kindOf(from, before, after) });
    else if (after) push({ path, from: null, before, after, kind: 'added' });
    else if (before) push({ path: from ?? path, from: null, before, after, kind: 'deleted' });
  };
  for (const { path, from } of changes) add(path, from);
  swapNames(pages);
  // let in or out by the settings alone, or a link to what changed
  const told = new Set(changes.flatMap(({ path, from }) => [path, from ?? path]));
  for (const path of new Set([...base.pages.keys(), ...head.pages.keys()]))
    if (!told.has(path) && base.pages.get(path)?.oid !== head.pages.get(path)?.oid) add(path, null);
  // placed by a layout that was changed, and never there; or still placed by a name that a picture had until it was renamed
  const [before, after] = [base, head].map(({ missing }) => new Set(missing.map(({ path }) => path)));
  const known = new Set(pages.map(({ path }) => path));
  const blank = (path: string, kind: ChangeKind) => {
    if (!known.has(path)) push({ path, from: null, before: null, after: null, kind });
  };
  for (const path of after) if (!before.has(path)) blank(path, base.pages.has(path) ? 'deleted' : 'added');
  for (const path of before) if (!after.has(path)) blank(path, 'deleted');
  return pages.sort((x, y) => (x.path < y.path ? -1 : 1));
}

/**
 * Pictures that took each other's names are renamed, which git, asked name by name, takes for changes of each. Only a whole
 * ring of them: of any other chain of names one content would be told nowhere.
 */
function swapNames(pages: readonly PageOf[]): void {
  const changed = pages.filter(({ kind }) => kind === 'changed');
  const holders = new Map(changed.map(page => [page.before!.oid, page]));
  for (const first of changed) {
    const ring: PageOf[] = [];
    let page: PageOf | undefined = first;
    while (page?.kind === 'changed' && !ring.includes(page)) {
      ring.push(page);
      page = holders.get(page.after!.oid);
    }
    if (page !== first || first.kind !== 'changed') continue;
    const held = ring
      .map((_, i) => ring[(i + 1) % ring.length])
      .map(({ path, before }) => ({ path, before }));
    for (const [i, { path, before }] of held.entries())
      Object.assign(ring[i], { kind: 'renamed', from: path, before, swapped: true });
  }
}

function kindOf(from: string | null, before: { oid: string }, after: { oid: string }): ChangeKind {
  const same = before.oid === after.oid;
  if (from !== null) return same ? 'renamed' : 'moved';
  return same ? 'mode' : 'changed';
}

/** Nothing of a picture is read because somebody made it executable. */
export const contentsToRead = ({ kind, path, from, before, after }: PageOf): NamedContent[] =>
  kind === 'mode'
    ? []
    : [
        ...(before ? [{ oid: before.oid, path: from ?? path }] : []),
        ...(after ? [{ oid: after.oid, path }] : []),
      ];

/** Pictures whose content and name are the same on both sides. */
export function unchangedPages(base: Side, head: Side, changes: readonly PageOf[]) {
  const changed = new Set(changes.filter(({ kind }) => kind !== 'mode').map(({ path }) => path));
  return [...head.pages].filter(([path]) => base.pages.has(path) && !changed.has(path));
}

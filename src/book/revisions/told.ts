// no-unit-test: test/book/revisions/compare.test.ts compares books through it
import { namesPicture } from '../discovery/extensions';
import type { Change } from './changes';
import type { Side } from './side';
import { type Entry, isFile, isLink, isSubmodule } from './snapshot';

/** What changed in the book's folder and cannot be compared as a picture. */
export function toldOf(changes: readonly Change[], base: Side, head: Side): string[] {
  return changes.flatMap(({ path, from, before, after }) => [
    ...(after && ofKind(after, path, head) ? [`"${path}" ${ofKind(after, path, head)}`] : []),
    ...(!after && before && ofKind(before, from ?? path, base)
      ? [`"${from ?? path}" ${ofKind(before, from ?? path, base)} It is not there any more.`]
      : []),
  ]);
}

function ofKind(entry: Entry, path: string, side: Side): string | null {
  if (isSubmodule(entry))
    return 'is a submodule: pictures in it belong to another repository and are not compared.';
  if (isLink(entry) && (namesPicture(path) || side.isPage(path)))
    return 'is a symbolic link: what it leads to is compared under its own name.';
  if (isFile(entry) && side.isPage(path) && !side.pages.has(path))
    return 'is placed by no layout, so it is not in the book.';
  return null;
}

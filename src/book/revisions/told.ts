// no-unit-test: test/book/comparison/compare.test.ts compares books through it
import { list } from '../../rules/words';
import type { Change } from '../git/changes';
import { type Entry, isFile, isLink, isSubmodule } from '../git/snapshot';
import type { Side } from './side';

/** What changed in the book's folder and cannot be compared as a picture, or is a link in place of one. */
export async function toldOf(changes: readonly Change[], base: Side, head: Side): Promise<string[]> {
  const apart: string[] = [];
  for (const { path, from, before, after } of changes) {
    const is = after && (await ofKind(after, path, head));
    const was = !after && before && (await ofKind(before, from ?? path, base));
    if (is) apart.push(`"${path}" ${is}`);
    if (was) apart.push(`"${from ?? path}" ${was} It is not there any more.`);
  }
  const replaced = changes.flatMap(change => linkWords(change, base, head) ?? []);
  const idle = changes.filter(({ path, after }) => after && isUnplaced(after, path, head));
  const gone = changes.filter(
    ({ path, from, before, after }) => !after && before && isUnplaced(before, from ?? path, base),
  );
  return [
    ...apart,
    ...replaced,
    ...(idle.length
      ? [
          `${names(idle)} ${idle.length === 1 ? 'is' : 'are'} placed by no layout, so ${idle.length === 1 ? 'it is' : 'they are'} not in the book.`,
        ]
      : []),
    ...(gone.length
      ? [
          `${names(gone)} ${gone.length === 1 ? 'is' : 'are'} not there any more. No layout placed ${gone.length === 1 ? 'it' : 'them'}, so the book did not have ${gone.length === 1 ? 'it' : 'them'}.`,
        ]
      : []),
  ];
}

/** Pictures of the book that nobody looked at, since they belong to another repository. */
export function beyondNotice({ beyond }: Pick<Side, 'beyond'>): string[] {
  if (!beyond.size) return [];
  const one = beyond.size === 1;
  return [
    `${list([...beyond].sort(), NAMED)} ${one ? 'lies in a submodule and was' : 'lie in submodules and were'} not looked at: what ${one ? 'it is' : 'they are'} the other repository knows. "evengrey check" of the folder judges ${one ? 'it' : 'them'}.`,
  ];
}

/** Submodules that are another commit now, or came, or went. */
export const submodulesOf = (changes: readonly Pick<Change, 'path' | 'before' | 'after'>[]): string[] =>
  changes.flatMap(({ path, before, after }) =>
    [before, after].some(entry => entry && isSubmodule(entry)) ? [path] : [],
  );

/** So many of them are named. */
const NAMED = 5;

const names = (changes: readonly Change[]): string =>
  list(
    changes.map(({ path, from }) => (from === null ? `"${path}"` : `"${path}", renamed from "${from}",`)),
    NAMED,
  );

const isUnplaced = (entry: Entry, path: string, side: Side): boolean =>
  isFile(entry) && side.notInBook.includes(path);

/** That a link took the place of a picture, or a picture that of a link: it prints what the link leads to. */
function linkWords({ path, from, before, after }: Change, base: Side, head: Side): string | null {
  if (!before || !after || isLink(before) === isLink(after)) return null;
  const [at, side] = isLink(after) ? [path, head] : [from ?? path, base];
  const target = linked(at, side);
  if (target === null) return null;
  return isLink(after)
    ? `"${path}" is no file of its own any more, but a link to "${target}", and prints as that does.`
    : `"${path}" is a file of its own now. Before, it was a link to "${target}".`;
}

/** The picture that a link of the book leads to. */
function linked(path: string, { pages, snapshot }: Side): string | null {
  const entry = pages.get(path);
  return [...snapshot].find(([, held]) => held === entry)?.[0] ?? null;
}

async function ofKind(entry: Entry, path: string, { tree }: Side): Promise<string | null> {
  if (isSubmodule(entry))
    return 'is a submodule: pictures in it belong to another repository and are not compared.';
  // of a link that leads to nothing else `look` says why it is not read
  if (isLink(entry) && (await tree.look(path)) === null)
    return 'is a symbolic link that is not followed: it leads into a submodule.';
  return null;
}

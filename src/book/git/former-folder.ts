// no-unit-test: test/book/comparison/compare.test.ts compares books whose folder was renamed
import { SETTINGS_FILE } from '../settings/settings-file';
import { askGit, pieces, runGit } from './git';
import type { Repository } from './repository';

/**
 * What a book's folder that was not there yet by its name was called at a commit before, from the top of the repository ('' is
 * the top itself); null where no other folder became it. Only files that are the same to the byte say so, and only of a folder that is gone and was a
 * book: one that has settings now had some.
 */
export async function formerFolder(
  { root, env }: Repository,
  base: string,
  head: string,
): Promise<string | null> {
  const folder = (await askGit(root, ['rev-parse', '--show-prefix'], { env }))
    .toString('utf8')
    .replace(/\r?\n$/, '');
  if (!folder) return null;
  const between = [
    'diff-tree',
    '-r',
    '-z',
    '--raw',
    '--no-relative',
    '--no-ext-diff',
    '-M100%',
    '--diff-filter=R',
  ];
  const { code, stdout } = await runGit(root, [...between, base, head, '--'], { env });
  const former = code === 0 ? mostOften(foldersOf(pieces(stdout), folder)) : null;
  if (former === null) return null;
  const holds = async (commit: string, path: string) =>
    (await runGit(root, ['ls-tree', '--full-tree', commit, path], { env })).stdout.length > 0;
  const [was, is] = [`${former && `${former}/`}${SETTINGS_FILE}`, `${folder}${SETTINGS_FILE}`];
  // the top of a repository is never gone: that a book left it is told by its settings alone
  if (!former) return (await holds(base, was)) && !(await holds(head, was)) ? former : null;
  if (await holds(head, former)) return null;
  // pictures that came from anywhere make a new book
  return (await holds(base, was)) || !(await holds(head, is)) ? former : null;
}

/** Of each file that was renamed into the folder the one that it came from, if it lay there as it lies in the folder now. */
function foldersOf(told: readonly string[], folder: string): string[] {
  const folders: string[] = [];
  for (let at = 0; at < told.length; at += 3) {
    const [from, to] = [told[at + 1], told[at + 2]];
    const within = to.startsWith(folder) ? `/${to.slice(folder.length)}` : null;
    // from the top of the repository too
    const whole = `/${from}`;
    if (within && whole.endsWith(within)) folders.push(whole.slice(1, -within.length));
  }
  return folders;
}

function mostOften(names: readonly string[]): string | null {
  const times = new Map<string, number>();
  for (const name of names) times.set(name, (times.get(name) ?? 0) + 1);
  return [...times].sort(([, x], [, y]) => y - x)[0]?.[0] ?? null;
}

import { NotInCloneError, pieces, runGit, saysMissing } from './git';
import type { Repository } from './repository';
import type { Entry } from './snapshot';

/** One path that differs between two snapshots; with `from`, one that was called so before. */
export interface Change {
  path: string;
  /** Its name before, where it was renamed; else null. */
  from: string | null;
  /** Null: it was not there. */
  before: Entry | null;
  /** Null: it is not there any more. */
  after: Entry | null;
}

export interface Changes {
  /** Sorted by path. */
  changes: Change[];
  /** False: contents are missing, so that only files renamed without a change are known as renamed. */
  renamesFollowed: boolean;
}

/** A file that kept half of its content is the same file (git's own default), among so many of them. */
const ALIKE = '50%';
const AMONG = 1000;

/** What differs between two commits in the book's folder. */
export const changesBetween = (repository: Repository, base: string, head: string): Promise<Changes> =>
  compared(repository, ['diff-tree', '-r', '--no-commit-id', '--relative'], [base, head]);

/** What differs between two trees, each a book's folder by whatever name. */
export const changesOfTrees = (repository: Repository, base: string, head: string): Promise<Changes> =>
  compared(repository, ['diff-tree', '-r', '--no-relative'], [base, head]);

/** What is staged on top of a commit; of the empty tree where there is none yet. What is only announced (`git add -N`) is not. */
export const changesStaged = (repository: Repository, commit: string | null): Promise<Changes> =>
  compared(
    repository,
    ['diff-index', '--cached', '--ita-invisible-in-index', '--relative'],
    [commit ?? EMPTY_TREE[repository.hash]],
  );

/** Git's own name of a tree without entries: the hash of `tree 0` and a zero byte. */
const EMPTY_TREE = {
  sha1: '4b825dc642cb6eb9a060e54bf8d69288fbee4904',
  sha256: '6ef19b41225c5369f1c104d45d8d85efa9b057b53b14b4b9b939dd74decc5321',
};

async function compared(
  { root, env }: Repository,
  verb: readonly string[],
  between: readonly string[],
): Promise<Changes> {
  const ask = (alike: string) =>
    runGit(root, [...verb, '-z', '--raw', '--no-ext-diff', `-M${alike}`, `-l${AMONG}`, ...between, '--'], {
      env,
    });
  const likeness = await ask(ALIKE);
  if (likeness.code === 0) return { changes: parsed(likeness.stdout), renamesFollowed: true };
  const exact = await ask('100%');
  if (saysMissing(exact.stderr)) throw new NotInCloneError(null);
  if (exact.code !== 0) throw new Error(`git ${verb[0]}: ${exact.stderr}`);
  return { changes: parsed(exact.stdout), renamesFollowed: false };
}

/** `:100644 100755 OID OID M` then one path, of a rename two; each ended by a zero byte. */
function parsed(answer: Buffer): Change[] {
  const told = pieces(answer);
  const changes: Change[] = [];
  for (let at = 0; at < told.length; ) {
    const [modeBefore, modeAfter, oidBefore, oidAfter, status] = told[at++].slice(1).split(' ');
    const first = told[at++];
    const renamed = status.startsWith('R');
    const entry = (mode: string, oid: string) => (mode === '000000' ? null : { mode, oid });
    changes.push({
      path: renamed ? told[at++] : first,
      from: renamed ? first : null,
      before: entry(modeBefore, oidBefore),
      after: entry(modeAfter, oidAfter),
    });
  }
  return changes.sort((x, y) => (x.path < y.path ? -1 : x.path > y.path ? 1 : 0));
}

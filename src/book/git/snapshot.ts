import type { ComparedRevision } from '../../shared/comparison';
import type { Change } from './changes';
import { askGit, GitError, pieces } from './git';
import type { Repository } from './repository';

/** What stands at a path in a revision or in the index. */
export interface Entry {
  /** Octal, as git tells it: `100644`, `100755`, `120000` (symbolic link), `160000` (submodule). */
  mode: string;
  oid: string;
}

/** Every path of the book's folder (relative to it, forward slashes), as a revision or the index holds it. */
export type Snapshot = ReadonlyMap<string, Entry>;

export const isFile = ({ mode }: Entry): boolean => mode.startsWith('100');
export const isLink = ({ mode }: Entry): boolean => mode === '120000';
export const isSubmodule = ({ mode }: Entry): boolean => mode === '160000';

/**
 * What the commit holds of the book's folder; nothing where it does not hold the folder. Of `COMMIT:FOLDER`, as `treeOf`
 * names it, what that holds.
 */
export async function snapshotOf({ root, env }: Repository, commit: string): Promise<Snapshot> {
  const whole = commit.includes(':') ? ['--full-tree'] : [];
  const listed = pieces(await askGit(root, ['ls-tree', '-r', '-z', ...whole, commit], { env }));
  return new Map(
    listed.map(line => {
      const [, mode, oid, path] = /^(\d+) \w+ ([0-9a-f]+)\t(.*)$/s.exec(line)!;
      return [path, { mode, oid }];
    }),
  );
}

/** Where git finds a book at a revision: its commit, or a folder of that which was called otherwise than now. */
export const treeOf = ({ commit, folderThen }: Pick<ComparedRevision, 'commit' | 'folderThen'>): string =>
  folderThen === undefined ? commit : `${commit}:${folderThen}`;

/** What the commit before held, of which the commit after differs by `changes`. */
export function snapshotBefore(after: Snapshot, changes: readonly Change[]): Snapshot {
  const before = new Map(after);
  for (const change of changes) if (change.after) before.delete(change.path);
  for (const change of changes) if (change.before) before.set(change.from ?? change.path, change.before);
  return before;
}

/** What is staged. @throws GitError in the middle of a merge */
export async function snapshotOfIndex({ root, env }: Repository): Promise<Snapshot> {
  const listed = pieces(await askGit(root, ['ls-files', '--stage', '-z'], { env }));
  return new Map(
    listed.map(line => {
      const [, mode, oid, stage, path] = /^(\d+) ([0-9a-f]+) (\d)\t(.*)$/s.exec(line)!;
      if (stage !== '0')
        throw new GitError(`"${path}" is in conflict: resolve the merge first, then check what is staged.`);
      return [path, { mode, oid }];
    }),
  );
}

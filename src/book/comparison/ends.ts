// no-unit-test: test/book/comparison/compare.test.ts compares books through it
import { type Changes, changesBetween, changesOfTrees } from '../git/changes';
import { treeOfFolder } from '../git/folder';
import { formerFolder } from '../git/former-folder';
import type { Repository } from '../git/repository';
import { commitsOf, mergeBase, openWithEnds } from '../git/revision';
import { type Snapshot, snapshotBefore, snapshotOf, treeOf } from '../git/snapshot';

/** Stands for what lies in the book's folder, as if all of it were committed. */
export const FOLDER = Symbol('folder');

export interface AskedEnds {
  /** The book's folder, absolute. */
  root: string;
  /** Revisions, by any name that git knows. */
  base: string;
  /** Null: the current commit. `FOLDER`: what lies in the book's folder, committed or not. */
  head: string | typeof FOLDER | null;
  /** Compare with where the two parted, not with `base` itself. */
  fromMergeBase: boolean;
  signal?: AbortSignal;
}

/** Two states of a book, as git holds them, and what differs between them. Close it when done. */
export interface Ends extends Changes {
  /** Seen so that the contents of both are found in it. */
  repository: Repository;
  /** What git calls the states: a commit, of what lies in the folder a tree. */
  base: string;
  head: string;
  /** The base is where the two parted, and not the revision that was asked for. */
  parted: boolean;
  before: Snapshot;
  after: Snapshot;
  /** What the book's folder was called at the base, from the top of the repository; null: as it is now, or there was none. */
  folderThen: string | null;
  close(): Promise<void>;
}

/** @throws GitError where there are no such revisions, or where git cannot say what lies in the folder */
export async function endsOf({ root, base, head, fromMergeBase, signal }: AskedEnds): Promise<Ends> {
  const names = [base, typeof head === 'string' ? head : 'HEAD'] as const;
  const { repository: opened, ends } = await openWithEnds(root, ...names);
  const [asked, commit] = ends ? [ends.base, ends.head] : await commitsOf(opened, names);
  const parted = () => ends?.parted ?? mergeBase(opened, asked, commit, ITSELF);
  const from = fromMergeBase ? await parted() : asked;
  const folder = head === FOLDER ? await treeOfFolder(opened, { signal }) : null;
  const close = async () => folder?.close();
  const repository = folder?.repository ?? opened;
  const to = folder?.tree ?? commit;
  try {
    const differing = await between(repository, from, to);
    return { ...differing, repository, base: from, head: to, parted: from !== asked, close };
  } catch (error) {
    await close();
    throw error;
  }
}

const ITSELF = 'Or compare with the revision itself: --no-merge-base.';

async function between(repository: Repository, base: string, head: string) {
  const [within, after] = await Promise.all([
    changesBetween(repository, base, head),
    snapshotOf(repository, head),
  ]);
  const before = snapshotBefore(after, within.changes);
  const isNew = after.size > 0 && before.size === 0;
  const folderThen = isNew ? await formerFolder(repository, base, head) : null;
  if (folderThen === null) return { ...within, before, after, folderThen };
  const moved = await changesOfTrees(repository, treeOf({ commit: base, folderThen }), `${head}:./`);
  return { ...moved, before: snapshotBefore(after, moved.changes), after, folderThen };
}

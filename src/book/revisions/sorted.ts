// no-unit-test: test/cli/actions/since.test.ts runs the built program in repositories of every kind
import fs from 'node:fs/promises';
import path from 'node:path';
import { gitName } from '../../picture/git-name';
import type { Found } from '../discovery/discover';
import type { Blobs } from '../git/blobs';
import { holds } from '../git/hash';
import type { Repository } from '../git/repository';
import { type Entry, isLink, type Snapshot } from '../git/snapshot';
import { settledFiles } from '../git/worktree';
import { inLanes } from '../lanes';
import { GitTree } from './git-tree';

const LOOKING = 8;

interface Holding {
  repository: Repository;
  /** The book's folder with its links resolved. */
  realRoot: string;
  blobs: Blobs;
  signal?: AbortSignal;
}

/** A file that is what it was: where it truly lies in the book's folder, and what it was. */
export interface Same {
  file: Found;
  at: string;
  entry: Entry;
}

/** Files of the folder, by what became of each since. */
export interface Sorted {
  changed: Found[];
  same: Same[];
  /** Of those that changed. */
  renamed: { path: string; from: string }[];
}

/** Holds the files of a book's folder against what a snapshot holds in their place, by their bytes. */
export async function sortedByChange(
  files: readonly Found[],
  before: Snapshot,
  { repository, realRoot, blobs, signal }: Holding,
): Promise<Sorted> {
  const settled = await settledFiles(repository);
  const tree = new GitTree(before, blobs);
  const kept = await inLanes(files, LOOKING, async (file): Promise<Same | 'astray' | null> => {
    signal?.throwIfAborted();
    const entry = await tree.contentAt(file.path);
    if (file.obstacle) return !entry && (await isSameLink(file, before)) ? 'astray' : null;
    if (!entry) return null;
    const at = await trueName(file, realRoot);
    const same = settled.has(at)
      ? settled.get(at) === entry.oid
      : await holds(file.file, entry.oid, repository, blobs, signal).catch(() => false);
    return same ? { file, at, entry } : null;
  });
  const changed = files.filter((_, i) => kept[i] === null);
  return {
    changed,
    same: kept.filter(one => one !== null && one !== 'astray'),
    renamed: renamedAmong(changed, before, settled),
  };
}

/** Files that git knows by now and that hold, byte for byte, what one held that lies no more where it lay. */
function renamedAmong(
  changed: readonly Found[],
  before: Snapshot,
  settled: ReadonlyMap<string, string>,
): { path: string; from: string }[] {
  const gone = new Map(
    [...before].flatMap(([path, { oid }]) => (settled.has(path) ? [] : [[oid, path] as const])),
  );
  return changed.flatMap(({ path }) => {
    const from = before.has(path) ? undefined : gone.get(settled.get(path) ?? '');
    return from === undefined ? [] : [{ path, from }];
  });
}

/** A link that led nowhere before, too. */
async function isSameLink({ path, file }: Found, before: Snapshot): Promise<boolean> {
  const entry = before.get(path);
  if (!entry || !isLink(entry)) return false;
  const target = await fs.readlink(file, 'buffer').catch(() => null);
  return target !== null && gitName(entry.oid, target.length).update(target).digest('hex') === entry.oid;
}

/** A path through a link is unknown to git, which knows what it leads to. */
async function trueName({ path: name, file }: Found, realRoot: string): Promise<string> {
  const real = await fs.realpath(file).catch(() => null);
  return real === null ? name : path.relative(realRoot, real).split(path.sep).join('/');
}

import fs from 'node:fs/promises';
import { count } from '../../rules/words';
import type { Found } from '../discovery/discover';
import { GitError } from '../git/git';
import { openRepository } from '../git/repository';
import { settledFiles } from '../git/worktree';
import { inLanes } from '../lanes';

/**
 * What a file of the book holds, as far as it is known without reading it: its size in bytes, null where there is no
 * file to be read; and what git calls its content, null where git does not vouch for it.
 */
export type Content = readonly [size: number | null, oid: string | null];

const LOOKING = 32;

/**
 * The contents of all files, in their order: every shard can tell them of those pictures too that it does not read.
 * Nothing hangs on where the folder lies or on when its files were written.
 */
export async function contentsOf(
  root: string,
  files: readonly Found[],
  signal?: AbortSignal,
): Promise<Content[]> {
  const settled = await settledIn(root);
  return inLanes(files, LOOKING, async ({ path, file, obstacle }): Promise<Content> => {
    signal?.throwIfAborted();
    const stat = obstacle ? null : await fs.stat(file).catch(() => null);
    return [stat?.size ?? null, (stat && settled.get(path)) ?? null];
  });
}

/** Nothing where there is no repository, or none that git can be asked about: sizes have to do. */
async function settledIn(root: string): Promise<ReadonlyMap<string, string>> {
  try {
    return await settledFiles(await openRepository(root));
  } catch (error) {
    if (error instanceof GitError) return new Map();
    throw error;
  }
}

/**
 * How two contents of one path differ, as a sentence goes on with it; null where nothing says that they do. One whose
 * name git does not know may be in a copy without its repository, and is told by its size alone.
 */
export function differenceOf([size, oid]: Content, [otherSize, otherOid]: Content): string | null {
  if (size !== otherSize) return `is ${sized(otherSize)} in one and ${sized(size)} in the other`;
  return oid !== null && otherOid !== null && oid !== otherOid
    ? 'has the same size in both, and by git another content'
    : null;
}

const sized = (bytes: number | null) => (bytes === null ? 'no file to be read' : count(bytes, 'byte'));

import fs from 'node:fs/promises';
import path from 'node:path';
import { askGit, GitError, runGit } from './git';
import type { Repository } from './repository';
import { newTemporaryFolder } from './temporary';
import { withoutFilters } from './worktree';

/** What lies in a book's folder, committed or not, as git would hold it. Close it when done: nothing is kept. */
export interface FolderTree {
  /** Names all of it, as a commit would. */
  tree: string;
  /** The repository, seen so that git finds the tree and the contents in it. */
  repository: Repository;
  close(): Promise<void>;
}

/**
 * Makes a tree of the book's folder as it is now, with what git ignores left out. The repository stays as it is: the index
 * is a copy, and contents that are new go into a store of their own, which is gone when it is closed. Only files that changed are
 * read.
 * @throws GitError in the middle of a merge, and where a file cannot be read
 */
export async function treeOfFolder(
  repository: Repository,
  options: { signal?: AbortSignal } = {},
): Promise<FolderTree> {
  const { root, commonDir } = repository;
  const own = await newTemporaryFolder();
  const close = () => fs.rm(own, { recursive: true, force: true });
  try {
    const index = path.join(own, 'index');
    const objects = path.join(own, 'objects');
    await fs.mkdir(objects);
    await copyIfThere(await indexOf(repository), index);
    const env = {
      ...repository.env,
      ...(await withoutFilters(repository)),
      GIT_INDEX_FILE: index,
      GIT_OBJECT_DIRECTORY: objects,
      GIT_ALTERNATE_OBJECT_DIRECTORIES: quoted(path.join(commonDir, 'objects')),
    };
    // contents live for a moment: packing them small would cost more than it saves
    const add = ['-c', 'core.compression=0', '-c', 'core.safecrlf=false', 'add', '--all', '--', '.'];
    const added = await runGit(root, add, { env, ...options });
    if (added.code !== 0) throw new GitError(unwritten(added.stderr));
    const written = await runGit(root, ['write-tree', '--missing-ok'], { env, ...options });
    if (written.code !== 0) throw new GitError(unwritten(written.stderr));
    return { tree: written.stdout.toString('utf8').trim(), repository: { ...repository, env }, close };
  } catch (error) {
    await close();
    throw error;
  }
}

async function indexOf({ root, env }: Repository): Promise<string> {
  if (env.GIT_INDEX_FILE) return env.GIT_INDEX_FILE;
  const told = await askGit(root, ['rev-parse', '--git-path', 'index']);
  return path.resolve(root, told.toString('utf8').replace(/\r?\n$/, ''));
}

/** Nothing has ever been staged where there is no index. */
async function copyIfThere(from: string, to: string): Promise<void> {
  await fs.copyFile(from, to).catch(error => {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  });
}

/** One entry of a list that git separates by colons. */
const quoted = (file: string): string => JSON.stringify(file);

function unwritten(complaint: string): string {
  if (/unmerged|needs merge/.test(complaint))
    return 'The repository is in the middle of a merge: resolve it first, then compare.';
  if (/ignored by one of your \.gitignore files/.test(complaint))
    return 'The repository around this folder ignores it, so that nothing of its past is kept. Begin one with "git init" in the folder, or take the folder out of .gitignore.';
  return `git cannot say what lies in the folder: ${complaint.replace(/^(fatal|error): /gm, '')}`;
}

import fs from 'node:fs/promises';
import path from 'node:path';
import { GitError, runGit } from './git';

/** The repository that a book's folder lies in. */
export interface Repository {
  /** The book's folder, absolute: git is asked from there, and paths go from there. */
  root: string;
  /** Where objects are, shared by all worktrees of the repository. */
  commonDir: string;
  /** How many commits are here is less than there are. */
  shallow: boolean;
  /** How objects are named. */
  hash: 'sha1' | 'sha256';
  /** What git needs to know to look at the index that a running commit makes; empty outside of a hook. */
  env: Record<string, string>;
}

/** A folder is where git keeps its own things, so that no book lies there. */
export class InsideGitError extends GitError {
  constructor(folder: string) {
    super(
      `"${folder}" is no folder of pictures, but the inside of a git repository, without its files. Make a folder of them first ("git worktree add FOLDER" there, or "git clone" elsewhere), and go on in that.`,
    );
  }
}

/** @throws GitError where the folder belongs to no repository, or where git does not trust it */
export const openRepository = async (root: string): Promise<Repository> =>
  (await openAsking(root, [])).repository;

/**
 * The same, and git's answer to one more question (words of `git rev-parse`), which is quicker than one after the other;
 * null where it has none.
 */
export async function openAsking(
  root: string,
  question: readonly string[],
): Promise<{ repository: Repository; answer: string | null }> {
  const { code, stdout, stderr } = await runGit(root, [
    'rev-parse',
    '--is-inside-work-tree',
    '--is-shallow-repository',
    '--show-object-format',
    '--absolute-git-dir',
    ...(question.length ? [MARK, ...question] : []),
  ]);
  const [about, answer] = stdout.toString('utf8').split(`\n${MARK}\n`);
  // a name may end in a space, so only the line's end goes; what can hold a line's end itself comes last
  const told = /^([^\n]*)\n([^\n]*)\n([^\n]*)\n(.+?)\r?\n?$/s.exec(about);
  if (!told) throw new GitError(notOne(root, stderr));
  const [, inTree, shallow, hash, gitDir] = told;
  if (inTree !== 'true') throw new InsideGitError(root);
  return {
    repository: await repositoryOf(root, { gitDir, shallow: shallow === 'true', hash }),
    answer: code === 0 && answer !== undefined ? answer : null,
  };
}

/** Git gives back a switch that it does not know as it is. */
const MARK = '--evengrey';

async function repositoryOf(
  root: string,
  { gitDir, shallow, hash }: { gitDir: string; shallow: boolean; hash: string },
): Promise<Repository> {
  const index = indexOfHook(gitDir);
  return {
    root,
    commonDir: await commonDirOf(gitDir),
    shallow,
    hash: hash === 'sha256' ? 'sha256' : 'sha1',
    env: index ? { GIT_INDEX_FILE: index } : {},
  };
}

/** A linked worktree says where the others' store is (git's own manual, gitrepository-layout, "commondir"). */
async function commonDirOf(gitDir: string): Promise<string> {
  const told = await fs.readFile(path.join(gitDir, 'commondir')).catch(() => null);
  return told ? path.resolve(gitDir, oneLine(told)) : gitDir;
}

/**
 * A commit of some files, or with `-a`, is made from an index of its own, and its hooks are told which. One of another
 * repository is none of ours.
 */
function indexOfHook(gitDir: string): string | null {
  const told = process.env.GIT_INDEX_FILE;
  if (!told) return null;
  const file = path.resolve(told);
  return path.dirname(file) === gitDir ? file : null;
}

/** A name may end in a space, so only the line's end goes. */
const oneLine = (answer: Buffer): string => answer.toString('utf8').replace(/\r?\n$/, '');

function notOne(root: string, complaint: string): string {
  if (/dubious ownership/.test(complaint))
    return `git does not trust the repository of "${root}", since it belongs to somebody else. Trust it with "git config --global --add safe.directory FOLDER".`;
  if (/not a git repository/.test(complaint))
    return `"${root}" is in no git repository, so there are no revisions of it. Begin one with "git init", and commit the book as it is.`;
  return complaint.replace(/^fatal: /, '');
}

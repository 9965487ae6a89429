import { GitError, runGit } from './git';
import type { Repository } from './repository';

/** The commit that a revision is, in full. @throws GitError where there is none of that name */
export async function commitOf(repository: Repository, name: string): Promise<string> {
  const args = ['rev-parse', '--verify', '--quiet', '--end-of-options', `${name}^{commit}`];
  const { code, stdout } = await runGit(repository.root, args);
  if (code === 0) return stdout.toString('utf8').trim();
  const cut = repository.shallow ? ` This clone is shallow and may hold one branch alone. ${FETCH_ALL}` : '';
  throw new GitError(
    name === 'HEAD'
      ? 'There is no commit yet, so there is nothing to compare with. Commit the book as it is first.'
      : `There is no revision "${name}" here.${cut}`,
  );
}

/**
 * The last commit that two lines of history share: what happened on one of them since is what is reviewed.
 * @param otherwise what a person can do instead, as a sentence
 * @throws GitError where none is known here
 */
export async function mergeBase(
  repository: Repository,
  base: string,
  head: string,
  otherwise: string,
): Promise<string> {
  const { code, stdout, stderr } = await runGit(repository.root, ['merge-base', base, head]);
  if (code === 0) return stdout.toString('utf8').split('\n')[0];
  if (repository.shallow)
    throw new GitError(
      `The history in this shallow clone does not reach back to where the two revisions parted. ${FETCH} ${otherwise}`,
    );
  throw new GitError(
    stderr
      ? `Where the two revisions parted is not known: ${stderr.replace(/^fatal: /, '')}`
      : `The two revisions share no history. ${otherwise}`,
  );
}

const FETCH_ALL =
  'Fetch the others too: git fetch --unshallow origin "+refs/heads/*:refs/remotes/origin/*" (in continuous integration: a full fetch depth).';
const FETCH =
  'Fetch the history with "git fetch --unshallow" (in continuous integration: a full fetch depth).';

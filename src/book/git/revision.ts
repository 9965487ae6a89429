import { GitError, runGit } from './git';
import { noRevision } from './no-revision';
import { openAsking, type Repository } from './repository';

/** The commit that a revision is, in full. @throws GitError where there is none of that name */
export const commitOf = async (repository: Repository, name: string): Promise<string> =>
  (await commitsOf(repository, [name]))[0];

/** The commits that revisions are, in their order. @throws GitError of the first of which there is none */
export async function commitsOf(repository: Repository, names: readonly string[]): Promise<string[]> {
  // a line is a question, and a name is none of several
  const asked = names.map(name => (/[\n\0]/.test(name) ? '' : `${name}^{commit}`));
  const input = asked.map(name => `${name}\n`).join('');
  const { stdout } = await runGit(repository.root, ['cat-file', '--batch-check'], { input });
  const answers = stdout.toString('utf8').split('\n');
  const commits: string[] = [];
  for (const [at, name] of names.entries()) {
    const found = /^([0-9a-f]+) commit \d+$/.exec(answers[at]);
    if (!found) throw await noCommit(repository, name);
    commits.push(found[1]);
  }
  return commits;
}

async function noCommit(repository: Repository, name: string): Promise<GitError> {
  const range = /^([^\n]*?[^.\n])(\.{2,3})([^.\n][^\n]*)?$/.exec(name);
  if (range) return new GitError(noRange(name, range[1], range[3] ?? 'HEAD', range[2] === '...'));
  return new GitError(
    name === 'HEAD'
      ? 'There is no commit yet, so there is nothing to compare with. Commit the book as it is first.'
      : await noRevision(repository, name),
  );
}

/** What git's own tools take for two revisions; with three dots from where they parted, with two from the first itself. */
function noRange(name: string, base: string, head: string, parted: boolean): string {
  const way = parted ? 'from where the two parted' : `from ${base} itself`;
  return `"${name}" is a range, and one revision was asked for. To compare its two ends ${way}, name them one after the other: evengrey compare ${base} ${head}${parted ? '' : ' --no-merge-base'}.`;
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

/** Two revisions as commits, and the last commit that they share. */
export interface Ends {
  base: string;
  head: string;
  parted: string;
}

/**
 * The same of two names in one question to git, which is quicker than one by one. `ends` null: it has no answer, as there is
 * no such commit, the histories do not meet here, or a name is none that can stand in a range. What is wrong is told by
 * those who ask one by one.
 * @param root the book's folder, absolute
 * @throws GitError as `openRepository`
 */
export async function openWithEnds(
  root: string,
  base: string,
  head: string,
): Promise<{ repository: Repository; ends: Ends | null }> {
  const isPlain = [base, head].every(name => PLAIN.test(name) && !name.includes('..'));
  const question = isPlain ? [`${base}^{commit}...${head}^{commit}`] : [];
  const { repository, answer } = await openAsking(root, question);
  const told = /^([0-9a-f]+)\n([0-9a-f]+)\n\^([0-9a-f]+)\n/.exec(answer ?? '');
  return { repository, ends: told && { head: told[1], base: told[2], parted: told[3] } };
}

const PLAIN = /^[\w@][\w./@{}~^-]*$/;

const FETCH =
  'Fetch the history with "git fetch --unshallow" (in continuous integration: a full fetch depth).';

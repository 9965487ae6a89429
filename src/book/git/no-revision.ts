// no-unit-test: test/book/git/revision.test.ts asks for revisions that are not there
import { suggest } from '../settings/suggest';
import { runGit } from './git';
import type { Repository } from './repository';

/** That there is no revision of a name here, whether another was meant, and how it may come here; plain sentences. */
export async function noRevision({ root, shallow }: Repository, name: string): Promise<string> {
  const [refs, remotes] = await Promise.all([
    linesOf(root, ['for-each-ref', '--format=%(refname:short)', 'refs/heads', 'refs/remotes', 'refs/tags']),
    linesOf(root, ['remote']),
  ]);
  const remote = remotes.find(remote => name.startsWith(`${remote}/`)) ?? null;
  const meant = remote === null ? likelyOf(name, refs, remotes) : onRemote(name, refs, `${remote}/`);
  return [
    `There is no revision "${name}" here.`,
    ...(meant ? [`Did you mean "${meant}"?`] : []),
    shallow
      ? `This clone is shallow and may hold one branch alone. ${FETCH_ALL}`
      : fetching(name, remote, remotes.length > 0),
  ].join(' ');
}

/** The branch of a remote that is called so, else any name that is nearly so. */
const likelyOf = (name: string, refs: readonly string[], remotes: readonly string[]): string | null =>
  refs.find(ref => remotes.some(remote => ref === `${remote}/${name}`)) ?? suggest(name, refs);

/** What is right already, the remote, makes no other name likelier. */
function onRemote(name: string, refs: readonly string[], prefix: string): string | null {
  const branches = refs.flatMap(ref => (ref.startsWith(prefix) ? ref.slice(prefix.length) : []));
  const branch = suggest(name.slice(prefix.length), branches);
  return branch && prefix + branch;
}

/** A clone of one branch knows none of the others, however often it is fetched. */
function fetching(name: string, remote: string | null, hasRemotes: boolean): string {
  const branch = remote && name.slice(remote.length + 1);
  if (branch && /^\w[\w./-]*$/.test(branch))
    return `If "${remote}" has that branch, fetch it: git fetch ${remote} "+refs/heads/${branch}:refs/remotes/${remote}/${branch}" (a clone of one branch does not do so by itself).`;
  return `"git branch --all" and "git tag" tell which there are${hasRemotes ? '; one that a remote alone has is to be fetched first' : ''}.`;
}

async function linesOf(root: string, question: readonly string[]): Promise<string[]> {
  const { code, stdout } = await runGit(root, question);
  return code === 0 ? stdout.toString('utf8').split('\n').filter(Boolean) : [];
}

const FETCH_ALL =
  'Fetch the others too: git fetch --unshallow origin "+refs/heads/*:refs/remotes/origin/*" (in continuous integration: a full fetch depth).';

import { pieces, runGit } from './git';

/**
 * The branch's own commit, where the current one is a merge that a service made of it to try it out: on no branch and under
 * no tag, so that no other clone will know it. Null where the current commit is one that others can have.
 */
export async function branchOfPassingMerge(root: string): Promise<string | null> {
  const onBranch = await runGit(root, ['symbolic-ref', '--quiet', 'HEAD']);
  if (onBranch.code === 0) return null;
  const second = await runGit(root, ['rev-parse', '--verify', '--quiet', 'HEAD^2']);
  const third = await runGit(root, ['rev-parse', '--verify', '--quiet', 'HEAD^3']);
  if (second.code !== 0 || third.code === 0) return null;
  const holders = await runGit(root, ['for-each-ref', '--contains', 'HEAD', '--format=%(refname)%00']);
  if (holders.code !== 0 || pieces(holders.stdout).some(name => !isTrial(name.trim()))) return null;
  return second.stdout.toString('utf8').trim();
}

/** Where services keep such merges, if they keep them under a name. Names as GitHub and GitLab document them. */
const isTrial = (name: string): boolean => /^refs\/(remotes\/)?(pull|merge-requests)\/\d+\/merge$/.test(name);

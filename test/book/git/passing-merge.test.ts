import assert from 'node:assert/strict';
import { branchOfPassingMerge } from '../../../src/book/git/passing-merge';
import { commit, git, repositoryOf } from '../revisions/support/repository';

/** A branch that was merged into what `main` became meanwhile, by somebody who stands on no branch. */
function merged(): { top: string; work: string } {
  const top = repositoryOf({ 'a.txt': '1' });
  git(top, 'checkout', '--quiet', '-b', 'work');
  commit(top, { 'b.txt': '2' });
  const work = git(top, 'rev-parse', 'HEAD').trim();
  git(top, 'checkout', '--quiet', 'main');
  commit(top, { 'a.txt': '3' });
  git(top, 'checkout', '--quiet', '--detach');
  git(top, 'merge', '--quiet', '--no-ff', '-m', 'Trial', 'work');
  return { top, work };
}

describe('a merge that only this clone has', () => {
  it('is told by the commit of the branch, also where a service keeps it under a name of its own', async () => {
    const { top, work } = merged();
    assert.equal(await branchOfPassingMerge(top), work);
    git(top, 'update-ref', 'refs/remotes/pull/7/merge', 'HEAD');
    assert.equal(await branchOfPassingMerge(top), work);
  });

  it('is none where others can have it: on a branch, under a tag, or no merge', async () => {
    const { top } = merged();
    git(top, 'tag', 'v1');
    assert.equal(await branchOfPassingMerge(top), null);
    git(top, 'tag', '--delete', 'v1');
    git(top, 'checkout', '--quiet', '-b', 'both');
    assert.equal(await branchOfPassingMerge(top), null);
    git(top, 'checkout', '--quiet', '--detach', 'work');
    assert.equal(await branchOfPassingMerge(top), null);
  });
});

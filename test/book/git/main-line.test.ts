import assert from 'node:assert/strict';
import { mainLine } from '../../../src/book/git/main-line';
import { git, repositoryOf } from '../revisions/support/repository';
import { temporaryFolder } from '../support/folder';

describe('the branch that others come back to', () => {
  it('is what the origin of the clone says', async () => {
    const origin = repositoryOf({ a: '1' });
    git(origin, 'branch', '-m', 'main', 'book');
    const root = temporaryFolder();
    git(root, 'clone', '--quiet', `file://${origin}`, 'clone');
    const clone = `${root}/clone`;
    git(clone, 'checkout', '--quiet', '-b', 'main');
    assert.equal(await mainLine({ root: clone }), 'origin/book');
  });

  it('is else one of a usual name, with the origin’s before one’s own', async () => {
    const root = repositoryOf({ a: '1' });
    assert.equal(await mainLine({ root }), 'main');
    git(root, 'branch', '-m', 'main', 'master');
    assert.equal(await mainLine({ root }), 'master');
    git(root, 'update-ref', 'refs/remotes/origin/master', 'HEAD');
    assert.equal(await mainLine({ root }), 'origin/master');
  });

  it('is not known where none is called so', async () => {
    const root = repositoryOf({ a: '1' });
    git(root, 'branch', '-m', 'main', 'mine');
    assert.equal(await mainLine({ root }), null);
  });
});

import assert from 'node:assert/strict';
import path from 'node:path';
import { repositoryOf } from '../../src/book/repository';
import { temporaryFolder } from './support/folder';

describe('the repository of a folder', () => {
  it('is the nearest folder upward with a .git, a folder or a file', async () => {
    const root = temporaryFolder({
      '.git/HEAD': '',
      'books/winter/a.tif': '',
      'tools/.git': 'gitdir: elsewhere',
    });
    assert.equal(await repositoryOf(path.join(root, 'books/winter')), root);
    assert.equal(await repositoryOf(root), root);
    assert.equal(await repositoryOf(path.join(root, 'tools')), path.join(root, 'tools'));
  });

  it('is the folder itself where there is none', async () => {
    const root = temporaryFolder({ 'a.tif': '' });
    assert.equal(await repositoryOf(root), root);
  });
});

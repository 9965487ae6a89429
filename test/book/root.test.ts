import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { booksBelow, findRoot } from '../../src/book/root';
import { temporaryFolder } from './support/folder';

describe('the root of a book', () => {
  it('is where the nearest settings are', async () => {
    const root = temporaryFolder({ 'evengrey.json': '{}', 'a/b/1.jpg': '', 'a/2.jpg': '' });
    assert.equal(await findRoot([path.join(root, 'a/b/1.jpg'), path.join(root, 'a')]), root);
  });

  it('is else the folder that the paths have in common', async () => {
    const root = temporaryFolder({ 'a/b/1.jpg': '', 'a/c/2.jpg': '' });
    assert.equal(await findRoot([path.join(root, 'a/b/1.jpg')]), path.join(root, 'a/b'));
    assert.equal(
      await findRoot([path.join(root, 'a/b'), path.join(root, 'a/c/2.jpg')]),
      path.join(root, 'a'),
    );
    fs.symlinkSync('a', path.join(root, 'link'));
    assert.equal(await findRoot([path.join(root, 'link')]), path.join(root, 'link'));
  });

  it('is never guessed between two books', async () => {
    const root = temporaryFolder({ 'x/evengrey.json': '{}', 'x/1.jpg': '', 'y/2.jpg': '' });
    await assert.rejects(findRoot([path.join(root, 'x/1.jpg'), path.join(root, 'y')]), /different books/);
    await assert.rejects(findRoot([path.join(root, 'gone')]), /There is no file or folder/);
  });

  it('may have books below, but those in ignored and hidden folders', async () => {
    const root = temporaryFolder({
      'evengrey.json.txt': '',
      'z/evengrey.json': '{}',
      'a/b/evengrey.json': '{}',
      'out/evengrey.json': '{}',
      '.old/evengrey.json': '{}',
      '.gitignore': 'out/\n',
      'c/1.jpg': '',
    });
    assert.deepEqual(await booksBelow(root, [root]), ['a/b', 'z']);
    assert.deepEqual(await booksBelow(root, [path.join(root, 'c'), path.join(root, 'c/1.jpg')]), []);
  });
});

import assert from 'node:assert/strict';
import { bookFoldersIn } from '../../../src/book/first-settings/folders';
import { temporaryFolder } from '../support/folder';

const foldersIn = async (files: Record<string, string>) =>
  Object.fromEntries((await bookFoldersIn(temporaryFolder(files))).map(each => [each.path, each.pictures]));

const two = { 'a/1.jpg': '', 'a/pictures/2.jpg': '', 'b/pictures/3.jpg': '' };

describe('the folders that first settings may be for', () => {
  it('are the folder itself, where nothing speaks for several books', async () => {
    assert.deepEqual(await foldersIn({}), { '': 0 });
    assert.deepEqual(await foldersIn({ 'pictures/1.jpg': '', 'text/one.md': '' }), { '': 1 });
    assert.deepEqual(await foldersIn({ ...two, 'cover.jpg': '' }), { '': 4 });
  });

  it('are those in it too, unless a layout places pictures of another folder', async () => {
    assert.deepEqual(await foldersIn(two), { '': 3, a: 2, b: 1 });
    assert.deepEqual(await foldersIn({ ...two, 'a/one.md': '![](1.jpg)' }), { '': 3, a: 2, b: 1 });
    assert.deepEqual(await foldersIn({ ...two, 'book.md': '![](a/1.jpg)' }), { '': 3 });
    assert.deepEqual(await foldersIn({ ...two, 'text/one.md': '![](../a/1.jpg)' }), { '': 3 });
  });

  it('never hold a picture of a book that has settings', async () => {
    const settings = { 'a/evengrey.json': '{}' };
    assert.deepEqual(await foldersIn({ ...two, ...settings }), { b: 1 });
    assert.deepEqual(await foldersIn({ ...two, ...settings, 'loose.jpg': '' }), { b: 1 });
    const deeper = { 'a/inner/evengrey.json': '{}', 'a/inner/4.jpg': '' };
    assert.deepEqual(await foldersIn({ ...two, ...deeper }), { 'a/pictures': 1, b: 1 });
    assert.deepEqual(await foldersIn({ 'a/1.jpg': '', ...settings }), {});
  });
});

import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { bookFolder } from '../../../src/book/first-settings/folder';
import { temporaryFolder } from '../support/folder';

describe('a folder that is to be a book', () => {
  it('is looked at for pictures and the layouts that place them', async () => {
    const root = temporaryFolder({
      'pictures/1.jpg': 'no picture, and nobody reads it',
      'pictures/2.png': '',
      'README.md': '![not a page](pictures/2.png)',
      'book.md': '# A book\n\n![One](pictures/1.jpg)\n\n![Gone](pictures/9.jpg)\n',
      'empty.md': 'no picture here\n',
    });
    assert.deepEqual(await bookFolder(root, null), {
      pictures: ['pictures/1.jpg', 'pictures/2.png'],
      placed: ['pictures/1.jpg'],
      layouts: ['book.md'],
      known: { line: [], colour: [], toned: [] },
    });
  });

  it('has pictures and layouts in the order of the book, each once', async () => {
    const root = temporaryFolder({
      ...{ '1.jpg': '', '2.jpg': '', '3.jpg': '' },
      '10.md': '![](1.jpg) ![](3.jpg)\n',
      '9.md': '![](3.jpg) ![](2.jpg)\n',
    });
    const { pictures, placed, layouts } = await bookFolder(root, null);
    assert.deepEqual(pictures, ['1.jpg', '2.jpg', '3.jpg']);
    assert.deepEqual(
      [placed, layouts],
      [
        ['3.jpg', '2.jpg', '1.jpg'],
        ['9.md', '10.md'],
      ],
    );
  });

  it('may be empty, and is left as it is', async () => {
    const root = temporaryFolder({});
    assert.deepEqual((await bookFolder(root, null)).pictures, []);
    assert.deepEqual(fs.readdirSync(path.resolve(root)), []);
  });
});

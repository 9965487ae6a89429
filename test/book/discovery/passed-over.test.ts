import assert from 'node:assert/strict';
import { bookFiles } from '../../../src/book/book-files';
import { isPassedOver, passedOverNotices } from '../../../src/book/discovery/passed-over';
import { noSettings } from '../../../src/book/settings/settings';
import { temporaryFolder } from '../support/folder';

describe('files that are passed over', () => {
  const files = {
    'a.jpg': '',
    'x/b.DNG': '',
    'x/c.nef': '',
    'book.pdf': '',
    'notes.txt': '',
    '.gitignore': 'c.nef\n',
  };
  const passedOver = async (more: Record<string, string>, pictures: string[] | null = null) => {
    const root = temporaryFolder({ ...files, ...more });
    return (await bookFiles({ root, paths: [root], settings: { ...noSettings, pictures } })).passedOver;
  };

  it('are raw files and documents, where every picture of the folder is the book’s', async () => {
    assert.deepEqual(await passedOver({}), ['book.pdf', 'x/b.DNG']);
    assert.deepEqual(await passedOver({}, ['*.jpg']), []);
    assert.deepEqual(await passedOver({ 'book.md': '![](a.jpg)\n' }), []);
  });

  it('are told in a line', () => {
    assert.deepEqual(passedOverNotices([]), []);
    assert.match(
      passedOverNotices(['a.nef'])[0],
      /^1 file was not looked at, since it is .*: a\.nef\. Export/,
    );
    const many = Array.from({ length: 9 }, (_, i) => `${i}.nef`);
    assert.match(passedOverNotices(many)[0], /^9 files were .*: 0\.nef, .* and 4 more\. /);
    assert.ok(isPassedOver('x.y/a.cr3') && !isPassedOver('x.nef/a') && !isPassedOver('nef'));
  });
});

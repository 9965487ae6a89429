import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { noSettings } from '../../../src/book/settings/settings';
import { stillPlaced } from '../../../src/remedy/relinking/still-placed';
import { book } from '../book-support';

describe('results that layouts still place', () => {
  const files = {
    'p/a.grey.jpg': 'a',
    'p/b.grey.jpg': 'b',
    'book.md': '![a](p/a.grey.jpg)\n',
    'in/page.html': '<p>\n<img src="../p/a.grey.jpg">\n',
  };
  /** Why each stays. */
  async function reasons(open: Record<string, string>, root = book(files), names = ['a', 'b']) {
    const why = await stillPlaced({ root, settings: noSettings, open: new Map(Object.entries(open)) });
    return Promise.all(names.map(name => why(path.join(root, `p/${name}.grey.jpg`))));
  }

  it('are told with a line that places them, whoever wrote it', async () => {
    const [a, b] = await reasons({});
    assert.match(a!, /^(book\.md:1|in\/page\.html:2) still places it, so it was left/);
    assert.equal(b, null);
  });

  it('are those of texts that are open and not saved', async () => {
    const [, b] = await reasons({ 'book.md': '\n\n![b](p/b.grey.jpg)\n' });
    assert.match(b!, /^book\.md:3 still places it, so it was left/);
  });

  it('are those of the stored text too, until what is open is saved', async () => {
    const [a] = await reasons({ 'book.md': '', 'in/page.html': '' });
    assert.match(a!, /still places it as it is stored, .*Save that text first/);
  });

  it('are found by whichever link leads to them', async () => {
    const root = book(files);
    fs.symlinkSync('a.grey.jpg', path.join(root, 'p/link.jpg'));
    fs.writeFileSync(path.join(root, 'book.md'), '![a](p/link.jpg)\n');
    fs.writeFileSync(path.join(root, 'in/page.html'), '');
    const other = path.join(book({}), 'root');
    fs.symlinkSync(root, other);
    assert.match((await reasons({}, other, ['a']))[0]!, /^book\.md:1 still places it/);
  });
});

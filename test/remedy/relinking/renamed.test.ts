import assert from 'node:assert/strict';
import { noSettings } from '../../../src/book/settings/settings';
import { relinkToRenamed } from '../../../src/remedy/relinking/renamed';
import { book, contents } from '../book-support';

describe('pictures that get other names', () => {
  const files = {
    'p/a.jpg': 'colour 1',
    'p/b.jpg': 'colour 2',
    'book.md': '![a](p/a.jpg)\n![b](p/b.jpg)\n',
    'in/book.html': '<img src="../p/a.jpg">\n',
    'evengrey.json': '{ "spreads": [["p/a.jpg", "p/b.jpg"]], "intent": { "toned": ["p/b.jpg"] } }\n',
  };
  const lines = async (open: [string, string][], names: [string, string][]) => {
    const root = book(files);
    const before = contents(root);
    const all = await relinkToRenamed({ root, settings: noSettings, open: new Map(open) }, new Map(names));
    assert.deepEqual(contents(root), before);
    return all.map(({ file, line, to }) => `${file}:${line} ${to}`).sort();
  };

  it('are named so by lines and settings, wherever they go, and nothing is written', async () => {
    assert.deepEqual(await lines([], [['p/a.jpg', 'q/new.jpg']]), [
      'book.md:1 q/new.jpg',
      'evengrey.json:1 q/new.jpg',
      'in/book.html:1 ../q/new.jpg',
    ]);
  });

  it('are looked for in the text that is open', async () => {
    assert.deepEqual(await lines([['book.md', '\n\n![a](p/a.jpg)\n']], [['p/a.jpg', 'p/c.jpg']]), [
      'book.md:3 p/c.jpg',
      'evengrey.json:1 p/c.jpg',
      'in/book.html:1 ../p/c.jpg',
    ]);
  });

  it('are named so by the settings where no layout places them', async () => {
    const open: [string, string][] = [['book.md', '']];
    assert.deepEqual(await lines(open, [['p/b.jpg', 'p/c.jpg']]), [
      'evengrey.json:1 p/c.jpg',
      'evengrey.json:1 p/c.jpg',
    ]);
  });
});

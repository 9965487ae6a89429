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
  async function relinked(
    names: [string, string][],
    open: [string, string][] = [],
    more: Record<string, string> = {},
  ) {
    const root = book({ ...files, ...more });
    const before = contents(root);
    const pictures = Object.keys(before).filter(name => /jpg$/.test(name));
    const how = { root, settings: noSettings, pictures, open: new Map(open) };
    const { edits, left } = await relinkToRenamed(
      how,
      names.map(([from, to]) => ({ from, to })),
    );
    assert.deepEqual(contents(root), before);
    return {
      lines: edits.map(({ file, line, to }) => `${file}:${line} ${to}`).sort(),
      left: left.map(({ file, line, why }) => `${file}:${line} ${why}`),
    };
  }
  const lines = async (open: [string, string][], names: [string, string][]) =>
    (await relinked(names, open)).lines;

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

  describe('with the layouts beside them', () => {
    const part = {
      'part/c.jpg': 'colour 3',
      'part/text.md': '![c](c.jpg)\n![c](./c.jpg)\n![c](../part/c.jpg)\n![a](../p/a.jpg)\n',
      'book.md': '![c](part/c.jpg)\n![a](p/a.jpg)\n',
      'evengrey.json': '{ "spreads": [["part/c.jpg", "p/a.jpg"]] }\n',
    };

    it('stay named as they are where that is right from the new place, else are named from there', async () => {
      assert.deepEqual(await relinked([['part', 'deep/er']], [], part), {
        lines: [
          'book.md:1 deep/er/c.jpg',
          'deep/er/text.md:3 c.jpg',
          'deep/er/text.md:4 ../../p/a.jpg',
          'evengrey.json:1 deep/er/c.jpg',
        ],
        left: [],
      });
    });

    it('are named from the new place of a layout that goes alone', async () => {
      const { lines } = await relinked([['part/text.md', 'text.md']], [], part);
      assert.deepEqual(lines, [
        'text.md:1 part/c.jpg',
        'text.md:2 ./part/c.jpg',
        'text.md:3 part/c.jpg',
        'text.md:4 p/a.jpg',
      ]);
    });

    it('are found as the tool of the layout finds them', async () => {
      const latex = '\\graphicspath{{img/}}\\includegraphics{d}\\includegraphics{p/a.jpg}';
      const more = { 'tex/main.tex': latex, 'tex/img/d.jpg': 'colour 4', 'tex/p/a.jpg': 'colour 5' };
      assert.deepEqual((await relinked([['tex', 'latex']], [], more)).lines, []);
      assert.deepEqual((await relinked([['tex/main.tex', 'main.tex']], [], more)).lines, [
        'main.tex:1 tex/img/d.jpg',
        'main.tex:1 tex/p/a.jpg',
      ]);
    });
  });

  describe('and layouts that the settings name', () => {
    const settings = (layouts: unknown) => ({ 'evengrey.json': JSON.stringify({ layouts }) });
    const named = (layouts: string[], ...names: [string, string][]) => {
      const root = book({ ...files, ...settings(layouts) });
      const how = {
        root,
        settings: { ...noSettings, layouts },
        pictures: [],
        open: new Map<string, string>(),
      };
      return relinkToRenamed(
        how,
        names.map(([from, to]) => ({ from, to })),
      ).then(({ edits, left }) => ({
        lines: edits.filter(({ file }) => file === 'evengrey.json').map(({ from, to }) => `${from} ${to}`),
        left: left.map(({ why }) => why),
      }));
    };

    it('are named there as they are called then, alone or with their folder', async () => {
      const both = ['./in/book.html', 'book.md'];
      assert.deepEqual(await named(both, ['book.md', 'text.md']), { lines: ['book.md text.md'], left: [] });
      assert.deepEqual(await named(both, ['in', 'web']), {
        lines: ['./in/book.html ./web/book.html'],
        left: [],
      });
      assert.deepEqual(await named(both, ['p', 'q']), { lines: [], left: [] });
    });

    it('are told where a pattern names them no more, and left to one that still does', async () => {
      assert.deepEqual(await named(['*.md'], ['book.md', 'text.md']), { lines: [], left: [] });
      assert.deepEqual(await named(['*.md'], ['book.md', 'in/book.md']), {
        lines: [],
        left: [
          '"*.md" names book.md and not in/book.md: what is said here does not hold for that. Add "in/book.md".',
        ],
      });
    });
  });

  it('are told where they cannot be named, and where a pattern misses them', async () => {
    const more = {
      'm.tex': '\\newcommand{\\plate}[1]{\\includegraphics{p/x-#1.jpg}}\n\\plate{1}',
      'p/x-1.jpg': 'colour 3',
      'evengrey.json': '{\n"pictures": ["p/*.jpg"] }\n',
    };
    const { left } = await relinked([['p/x-1.jpg', 'q/1.jpg']], [], more);
    assert.deepEqual(left, [
      'm.tex:2 "q/1.jpg" cannot be named here: the layout puts "p/x-" before and ".jpg" behind it.',
      'evengrey.json:2 "p/*.jpg" names p/x-1.jpg and not q/1.jpg: what is said here does not hold for that. Add "q/1.jpg".',
    ]);
  });

  it('are not told twice by a pattern that leaves out what no layout places', async () => {
    const ignoring = { 'evengrey.json': '{ "ignore": ["q"] }', 'book.md': '', 'in/book.html': '' };
    assert.deepEqual(await relinked([['p/a.jpg', 'q/a.jpg']], [], ignoring), { lines: [], left: [] });
  });
});

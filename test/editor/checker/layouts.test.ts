import assert from 'node:assert/strict';
import { resolvedLayouts } from '../../../src/book/layouts';
import { noSettings } from '../../../src/book/settings/settings';
import { OpenLayouts, rangeOf } from '../../../src/editor/checker/layouts';
import type { Place, PlacedFinding } from '../../../src/shared/layout-places';
import { temporaryFolder } from '../../book/support/folder';

const stained: PlacedFinding = {
  rule: 'residual-chroma',
  severity: 'warning',
  message: 'A stain.',
  fix: 'rgb-neutral',
  fixAs: null,
};

const coarse: PlacedFinding = {
  rule: 'low-resolution',
  severity: 'warning',
  message: 'Soft.',
  fix: null,
  fixAs: null,
};

async function opened(files: Record<string, string>, found = [stained], settings = noSettings) {
  const root = temporaryFolder(files);
  const pictures = Object.keys(files).filter(name => /(png|jpg)$/.test(name));
  return new OpenLayouts(root, await resolvedLayouts(root, settings), settings, pictures, picture =>
    picture === 'p/six.png' ? found : [],
  );
}

const brief = ({ start, end, picture, isThere, findings }: Place) =>
  `${start.line}:${start.column}-${end.line}:${end.column} ${picture} ${isThere} ${findings.map(({ rule }) => rule)}`;

describe('layouts that an editor has open', () => {
  const files = {
    'a.md':
      '\uFEFF![](p/six.png)\n\n![x](p/one.jpg) ![](gone.jpg) ![](../x.jpg) ![](../)\n![](https://a.b/c.jpg)\n',
    'b.tex': '\\graphicspath{{p/}}\n\\includegraphics{six}\n',
    'p/six.png': '',
    'p/one.jpg': '',
    'q/six.png': '',
  };

  it('tell exactly where every picture is named, as an editor counts, and what was found on it', async () => {
    const texts = (await opened(files)).texts();
    assert.deepEqual(
      texts.map(({ path, places }) => [path, ...places.map(brief)]),
      [
        [
          'a.md',
          '0:4-0:13 p/six.png true residual-chroma',
          '2:5-2:14 p/one.jpg true ',
          '2:20-2:28 gone.jpg false ',
          '2:34-2:42 null true ',
        ],
        ['b.tex', '1:17-1:20 p/six.png true residual-chroma'],
      ],
    );
  });

  it('have what the placed size causes where a size is stated, and on every line where the settings state it', async () => {
    const both = {
      'a.md': '![](p/six.png)\n',
      'b.html': '<img src="p/six.png" style="width:120mm">\n',
      'p/six.png': '',
    };
    const rulesIn = async (files: Record<string, string>, settings = noSettings) =>
      (await opened(files, [stained, coarse], settings))
        .texts()
        .map(({ places }) => places.flatMap(({ findings }) => findings.map(({ rule }) => rule)).join());
    const all = 'residual-chroma,low-resolution';
    assert.deepEqual(await rulesIn(both), ['residual-chroma', all]);
    const inSettings = { ...noSettings, placements: [{ picture: 'p/*.png', width: 120 }] };
    assert.deepEqual(await rulesIn(both, inSettings), [all, all]);
    assert.deepEqual(await rulesIn({ 'a.md': both['a.md'], 'p/six.png': '' }), [all]);
  });

  it('follow a text that was not saved; lines that moved alone make no other book', async () => {
    const layouts = await opened(files);
    const moved = await layouts.placesIn({ path: 'b.tex', text: `%\n%\n${files['b.tex']}` });
    assert.deepEqual(moved.places.map(brief), ['3:17-3:20 p/six.png true residual-chroma']);
    assert.equal(moved.changed, false);
  });

  it('say that the book is another where a text places another picture, at another size, or from another folder', async () => {
    const layouts = await opened(files);
    const changedBy = async (text: string) => (await layouts.placesIn({ path: 'b.tex', text })).changed;
    assert.equal(await changedBy(files['b.tex']), false);
    assert.equal(await changedBy(files['b.tex'].replace('{six}', '{one}')), true);
    assert.equal(await changedBy(files['b.tex'].replace('{six}', '[width=5cm]{six}')), true);
    assert.equal(await changedBy(files['b.tex'].replace('{p/}', '{q/}')), true);
    assert.equal(await changedBy(''), true);
  });

  it('name what could be placed where a picture is missing, in a text that was not saved too', async () => {
    const layouts = await opened({ ...files, 'q/gone.png': '' });
    const instead = ({ places }: { places: Place[] }) => places.flatMap(place => place.instead);
    assert.deepEqual(instead(layouts.texts()[0]), [{ picture: 'q/gone.png', to: 'q/gone.png' }]);
    const now = await layouts.placesIn({ path: 'a.md', text: '![](one.jpg) ![](other.jpg)' });
    assert.deepEqual(instead(now), [{ picture: 'p/one.jpg', to: 'p/one.jpg' }]);
  });

  it('are those too that a named one takes in, as long as it does', async () => {
    const main = (chapter: string) => `\\documentclass{book}\\graphicspath{{p/}}${chapter}`;
    const book = { ...files, 'book.tex': main('\\input{b}'), 'b.tex': '\\includegraphics{six}\n' };
    const layouts = await opened(book, [stained], { ...noSettings, layouts: ['book.tex'] });
    const places = (texts: { path: string; places: Place[] }[]) =>
      texts.map(({ path, places }) => [path, ...places.map(brief)]);
    const [ofBook, ofChapter] = places(layouts.texts());
    assert.deepEqual(ofBook, ['b.tex', '0:17-0:20 p/six.png true residual-chroma']);
    assert.deepEqual(ofChapter, ['book.tex']);
    assert.equal((await layouts.placesIn({ path: 'book.tex', text: main('\n\\input{b}') })).changed, false);
    assert.equal((await layouts.placesIn({ path: 'book.tex', text: main('') })).changed, true);
    const typed = await layouts.placesIn({ path: 'b.tex', text: '\\includegraphics{one}\n' });
    assert.deepEqual(typed.places.map(brief), ['0:17-0:20 p/one.jpg true ']);
  });

  it('know nothing of a text that is no layout of the book', async () => {
    const text = '![](p/six.png)';
    const layouts = await opened({ ...files, 'README.md': '' });
    assert.deepEqual(await layouts.placesIn({ path: 'README.md', text }), { places: [], changed: false });
  });
});

describe('a stretch of a text', () => {
  it('ends on its own line, or where its last line ends', () => {
    assert.deepEqual(rangeOf('abc', { line: 2, column: 3 }), {
      start: { line: 1, column: 2 },
      end: { line: 1, column: 5 },
    });
    assert.deepEqual(rangeOf('ab\r\ncde', { line: 2, column: 3 }).end, { line: 2, column: 3 });
  });
});

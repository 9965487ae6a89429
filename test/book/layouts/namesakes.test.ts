import assert from 'node:assert/strict';
import fs from 'node:fs/promises';
import path from 'node:path';
import { resolvedLayouts } from '../../../src/book/layouts';
import { Namesakes } from '../../../src/book/layouts/namesakes';
import { noSettings } from '../../../src/book/settings/settings';
import { temporaryFolder } from '../support/folder';

/** What the first missing picture of a layout could be, and what its line says then. */
async function insteadIn(layout: string, text: string, pictures: readonly string[], more = {}) {
  const root = temporaryFolder({
    ...{ [layout]: text, ...more },
    ...Object.fromEntries(pictures.map(picture => [picture, ''])),
  });
  const { sources } = await resolvedLayouts(root, noSettings);
  const placedBy = new Set(
    sources.flatMap(({ placed }) =>
      placed.flatMap(({ found }) => (found.kind === 'found' ? found.path : [])),
    ),
  );
  const source = sources.find(({ path }) => path === layout)!;
  const placed = source.placed.find(({ found }) => found.kind === 'missing')!;
  return { root, source, placed, all: new Namesakes(pictures, placedBy).of(source, placed) };
}

const named = async (...asked: Parameters<typeof insteadIn>) =>
  (await insteadIn(...asked)).all.map(({ picture }) => picture);

describe('pictures that a line could place where its own is missing', () => {
  it('are written as its language wants it, so that the line finds them then', async () => {
    const languages: [string, string, string?][] = [
      ['in/a.md', '![x](../p/fig%201.jpg "A title")\n'],
      ['in/a.md', '[f]: <../p/fig 1.jpg>\n\n![x][f]\n'],
      ['in/a.html', '<img alt="" src="../p/fig%201.jpg">\n'],
      ['in/a.html', '<img srcset="../p/fig%201.jpg 2x, ../p/there.jpg 1x">\n'],
      ['in/a.css', "a { background: url('../p/fig 1.jpg') }\n"],
      ['in/a.tex', '\\includegraphics[width=5cm]{../p/fig 1.jpg}\n'],
      ['in/a.tex', '\\graphicspath{{../p/}}\n\\includegraphics{fig 1}\n'],
      ['in/a.typ', '#image("../p/fig 1.jpg", width: 5cm)\n'],
      ['in/a.typ', '#image("/p/fig 1.jpg")\n'],
      ['in/a.adoc', ':imagesdir: ../p\n\nimage::fig 1.jpg[width=5cm]\n'],
    ];
    for (const [layout, text] of languages) {
      const pictures = ['q/r/fig 1.jpg', 'p/there.jpg'];
      const { root, source, placed, all } = await insteadIn(layout, text, pictures);
      assert.equal(all.length, 1, text);
      const { start, end } = placed.reference;
      await fs.writeFile(path.join(root, layout), text.slice(0, start) + all[0].to + text.slice(end));
      const now = (await resolvedLayouts(root, noSettings)).sources.find(({ path }) => path === source.path)!;
      const paths = now.placed.map(({ found }) => found.kind === 'found' && found.path);
      assert.ok(paths.includes('q/r/fig 1.jpg'), `${text} ${all[0].to}`);
    }
  });

  it('are, where none has its name, the one whose name is near, if no line places it', async () => {
    const text = '![](<p/12 Kueche.jpg>)\n';
    const { all } = await insteadIn('a.md', text, ['p/11 Hafen.jpg', 'p/12 Küche.jpg']);
    assert.deepEqual(all, [{ picture: 'p/12 Küche.jpg', to: 'p/12 Küche.jpg' }]);
    assert.deepEqual(await named('a.md', `${text}\n![](<p/12 Küche.jpg>)\n`, ['p/12 Küche.jpg']), []);
  });

  it('come by the way with the fewest steps up', async () => {
    const text = '\\graphicspath{{img/}}\n\\includegraphics{a.jpg}\n';
    const { all } = await insteadIn('t.tex', text, ['old/a.jpg']);
    assert.deepEqual(all, [{ picture: 'old/a.jpg', to: 'old/a.jpg' }]);
  });

  it('are the nearest first, the name itself before other capitals and another extension, five at most', async () => {
    const pictures = [
      'p/a.png',
      'p/A.jpg',
      'p/x/a.jpg',
      'q/a.jpg',
      'a.jpg',
      'q/x/a.jpg',
      'q/x/y/a.jpg',
      'p/ab.jpg',
    ];
    assert.deepEqual(await named('t.md', '![](p/a.jpg)\n', pictures), [
      'p/A.jpg',
      'p/a.png',
      'a.jpg',
      'p/x/a.jpg',
      'q/a.jpg',
    ]);
  });

  it('may have any extension where none is written', async () => {
    const pictures = ['q/a.png', 'q/a.jpg'];
    assert.deepEqual(await named('t.tex', '\\includegraphics{p/a}\n', pictures), ['q/a.jpg', 'q/a.png']);
  });

  it('are such as its tool places, unless it names that format itself', async () => {
    const pictures = ['q/a.tif', 'q/a.jpg'];
    assert.deepEqual(await named('t.html', '<img src="p/a.png">', pictures), ['q/a.jpg']);
    assert.deepEqual(await named('t.html', '<img src="p/a.tif">', pictures), ['q/a.tif', 'q/a.jpg']);
  });

  it('are such as it can name with what stands round it', async () => {
    const text = '\\newcommand{\\plate}[1]{\\includegraphics{p/#1.jpg}}\n\\plate{a}\n';
    assert.deepEqual(await named('t.tex', text, ['p/q/a.jpg', 'p/q/a.png', 'r/a.jpg']), [
      'p/q/a.jpg',
      'r/a.jpg',
    ]);
  });

  it('are none of those that another picture hides', async () => {
    const text = '\\graphicspath{{img/}}\n\\includegraphics{x/a.jpg}\n';
    const { all } = await insteadIn('t.tex', text, ['img/a.jpg']);
    assert.deepEqual(all, [{ picture: 'img/a.jpg', to: 'a.jpg' }]);
    const hidden = await insteadIn('t.tex', text, ['img/a.jpg', 'a.jpg']);
    assert.deepEqual(hidden.all, [
      { picture: 'img/a.jpg', to: 'img/a.jpg' },
      { picture: 'a.jpg', to: 'a.jpg' },
    ]);
  });

  it('are none where the picture is there', async () => {
    const root = temporaryFolder({ 't.md': '![](a.jpg)\n', 'a.jpg': '', 'q/a.jpg': '' });
    const [source] = (await resolvedLayouts(root, noSettings)).sources;
    assert.deepEqual(new Namesakes(['a.jpg', 'q/a.jpg'], new Set()).of(source, source.placed[0]), []);
  });
});

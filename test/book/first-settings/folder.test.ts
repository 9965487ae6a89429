import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { bookFolder } from '../../../src/book/first-settings/folder';
import { temporaryFolder } from '../support/folder';

const tex = String.raw;

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

  it('has the main file beside its chapters, which says where their pictures lie', async () => {
    const pictures = { 'bilder/hafen.jpg': '', 'bilder/teil zwei/nacht.jpg': '', 'bilder/unbenutzt.jpg': '' };
    const chapter = tex`\includegraphics{hafen.jpg}`;
    const latex = temporaryFolder({
      ...pictures,
      'latex/kapitel/eins.tex': chapter,
      'latex/kapitel/zwei.tex': tex`\includegraphics[width=\textwidth]{nacht}`,
      'latex/buch.tex': tex`\documentclass{book}\usepackage[textwidth=200mm]{geometry}
        \graphicspath{{../bilder/}{../bilder/teil zwei/}}
        \begin{document}\include{kapitel/eins}\input{kapitel/zwei}\end{document}`,
    });
    const found = await bookFolder(latex, null);
    assert.deepEqual(found.placed, ['bilder/hafen.jpg', 'bilder/teil zwei/nacht.jpg']);
    assert.deepEqual(found.layouts, ['latex/buch.tex', 'latex/kapitel/eins.tex', 'latex/kapitel/zwei.tex']);
    const asciidoc = temporaryFolder({
      ...pictures,
      'a.adoc': 'image::hafen.jpg[]\n',
      'z.adoc': ':imagesdir: bilder\n\ninclude::a.adoc[]\n',
    });
    assert.deepEqual((await bookFolder(asciidoc, null)).layouts, ['z.adoc', 'a.adoc']);
    const typst = temporaryFolder({
      ...pictures,
      'buch.typ': '#import "mittel.typ": bild\n#include "kapitel/eins.typ"\n',
      'mittel.typ': '#let bild(name) = image("bilder/" + name)',
      'kapitel/eins.typ': '#import "../mittel.typ": bild\n#bild("hafen.jpg")\n',
    });
    assert.deepEqual((await bookFolder(typst, null)).layouts, ['buch.typ', 'kapitel/eins.typ']);
  });

  it('has many layouts by their folder and ending, if that places the same pictures, else each by its name', async () => {
    const chapters = Array.from({ length: 9 }, (_, n) => [`parts/${n}.md`, `![](../${n}.jpg)`]);
    const files = {
      ...Object.fromEntries(chapters),
      ...Object.fromEntries(chapters.map((_, n) => [`${n}.jpg`, ''])),
    };
    const { layouts } = await bookFolder(
      temporaryFolder({ ...files, 'cover.tex': tex`\includegraphics{1.jpg}` }),
      null,
    );
    assert.deepEqual(layouts, ['*.tex', 'parts/*.md']);
    const readme = temporaryFolder({ ...files, '10.jpg': '', 'parts/README.md': '![](../10.jpg)' });
    assert.deepEqual(
      (await bookFolder(readme, null)).layouts,
      chapters.map(([name]) => name),
    );
  });

  it('may be empty, and is left as it is', async () => {
    const root = temporaryFolder({});
    assert.deepEqual((await bookFolder(root, null)).pictures, []);
    assert.deepEqual(fs.readdirSync(path.resolve(root)), []);
  });
});

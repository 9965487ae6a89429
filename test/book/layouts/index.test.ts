import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import { placementsOf, resolvedLayouts } from '../../../src/book/layouts';
import { relinkAll } from '../../../src/book/layouts/relink-all';
import { noSettings } from '../../../src/book/settings/settings';
import { temporaryFolder } from '../support/folder';

const tex = String.raw;
const read = async (root: string, settings = {}, open?: ReadonlyMap<string, string>) =>
  placementsOf(await resolvedLayouts(root, { ...noSettings, ...settings }, { open }));
const told = (places: { file: string; line: number; column: number; picture?: string; path?: string }[]) =>
  places.map(place => `${place.file}:${place.line}:${place.column} ${place.picture ?? place.path}`);

describe('the layouts of a book', () => {
  it('are found as pictures are, our own pages left out, and say which pictures they place, where, and how large', async () => {
    const root = temporaryFolder({
      'book.md': '# Book\n\n![a](p/1.jpg){width=50%}\n\n<img src="p/2.jpg" width=96>\n',
      'style/book.css': 'body { background: url(../p/3.png) }',
      'README.md': '![](p/no.jpg)',
      '.gitignore': '_out/\n',
      '_out/book.html': '<img src="no.jpg">',
      'old/x.md': '![](no.jpg)',
      'report.html':
        '<!DOCTYPE html>\n<html>\n<meta name="generator" content="Evengrey">\n<img src="p/1.jpg"><img src="no.jpg">',
      'p/1.jpg': '',
      'p/2.jpg': '',
      'p/3.png': '',
    });
    const found = await read(root, { textWidth: 160, ignore: ['old'] });
    assert.deepEqual(found.files, ['book.md', 'style/book.css']);
    assert.deepEqual(told(found.placements), [
      'book.md:3:6 p/1.jpg',
      'book.md:5:11 p/2.jpg',
      'style/book.css:1:24 p/3.png',
    ]);
    assert.deepEqual(
      found.placements.map(({ size }) => size),
      [{ width: 80 }, { width: 25.4 }, null],
    );
    assert.deepEqual([found.missing, found.outside, found.notRead], [[], [], []]);
  });

  it('place a picture where it is shown, also where its path is defined further down', async () => {
    const root = temporaryFolder({
      'book.md': '![][first]\n\n![](2.jpg) ![shown][third]\n\n[third]: 3.jpg\n[first]: 1.jpg\n',
      ...{ '1.jpg': '', '2.jpg': '', '3.jpg': '' },
    });
    assert.deepEqual(told((await read(root)).placements), [
      'book.md:6:10 1.jpg',
      'book.md:3:5 2.jpg',
      'book.md:5:10 3.jpg',
    ]);
  });

  it('have the sizes of the style sheet that a Markdown text names, listed or not, which places nothing by that', async () => {
    const root = temporaryFolder({
      'text/book.md': '---\ncss: ../style/book.css\n---\n![](1.jpg)\n',
      'style/book.css': 'img { width: 180mm } body { background: url(2.jpg) }',
      ...{ 'text/1.jpg': '', 'style/2.jpg': '' },
    });
    const sizesOf = async (settings = {}) =>
      (await read(root, settings)).placements.map(({ picture, size }) => [picture, size?.width]);
    assert.deepEqual(await sizesOf(), [
      ['text/1.jpg', 180],
      ['style/2.jpg', undefined],
    ]);
    assert.deepEqual(await sizesOf({ layouts: ['text'] }), [['text/1.jpg', 180]]);
  });

  it('place pictures in the order of the book: chapters where they are taken in, style sheets last', async () => {
    const root = temporaryFolder({
      'a/one.tex': tex`\includegraphics{p/4.jpg}\includegraphics{p/1.jpg}`,
      'book.tex': tex`\documentclass{book}\includegraphics{p/3.jpg}
        \input{a/one}\includegraphics{p/2.jpg}\includegraphics{p/4.jpg}`,
      'a.css': 'body { background: url(p/5.jpg) }',
      'z/10.adoc': 'image::../p/6.jpg[]\n',
      'z/9.adoc': 'image::../p/7.jpg[]\n\ninclude::deep/x.adoc[]\n\nimage::../p/8.jpg[]\n',
      'z/deep/x.adoc': 'image::../p/9.jpg[]\n',
      'z/page.html':
        '<style>body { background: url(../p/10.jpg) }</style><p style="background:url(../p/11.jpg)">',
      ...Object.fromEntries(Array.from({ length: 11 }, (_, i) => [`p/${i + 1}.jpg`, ''])),
    });
    const order = async (settings = {}) =>
      (await read(root, settings)).placements.map(({ picture, inStyleSheet }) =>
        picture.replace(/p\/(.*)\.jpg/, inStyleSheet ? 'style $1' : '$1'),
      );
    const [latex, styles] = [
      ['3', '4', '1', '2', '4'],
      ['style 5', 'style 10'],
    ];
    assert.deepEqual(await order(), [...latex, '7', '9', '8', '6', '11', ...styles]);
    assert.deepEqual(await order({ layouts: ['z', '**'] }), [
      ...['7', '9', '8', '6', '11'],
      ...latex,
      ...['style 10', 'style 5'],
    ]);
  });

  it('are those that the settings name, a readme too, or none', async () => {
    const root = temporaryFolder({ 'README.md': '![](a.jpg)', 'b.md': '![](a.jpg)', 'a.jpg': '' });
    assert.deepEqual((await read(root, { layouts: ['README.md', 'a.jpg'] })).files, ['README.md']);
    assert.deepEqual((await read(root, { layouts: [] })).files, []);
  });

  it('tell what is missing, what lies outside and what could not be read', async () => {
    const root = temporaryFolder({
      'a/x.md': '![](no.jpg)\n![](../../out.jpg)\n![](https://a.b/c.jpg)\n![](A.JPG)',
      'a/a.jpg': '',
      'huge.html': '<img src="a/a.jpg">'.padEnd(4 * 1024 * 1024 + 1),
    });
    execFileSync('mkfifo', [path.join(root, 'pipe.md')]);
    const found = await read(root);
    assert.deepEqual(told(found.missing), ['a/x.md:1:5 a/no.jpg', 'a/x.md:4:5 a/A.JPG']);
    assert.deepEqual(told(found.outside), ['a/x.md:2:5 ../../out.jpg']);
    assert.deepEqual(
      found.notRead.map(({ path, why }) => `${path}: ${why}`),
      [
        'huge.html: It is larger than 4 MB.',
        'pipe.md: This is a pipe, not a file, and was not opened. Put the picture itself here.',
      ],
    );
  });

  it('share what a document says: folders, macros and widths of LaTeX, wherever in it they stand', async () => {
    const root = temporaryFolder({
      'tex/main.tex': tex`\documentclass{book}\input{preamble}\begin{document}\include{parts/one}\end{document}`,
      'tex/preamble.tex': tex`\usepackage[textwidth=120mm]{geometry}\graphicspath{{img/}}\newcommand{\plate}[1]{\includegraphics[width=.5\textwidth]{#1}}`,
      'tex/parts/one.tex': tex`\plate{a} \includegraphics{b.c.png} \includegraphics{no}`,
      'tex/img/a.jpg': '',
      'tex/img/b.c.png': '',
      'other.tex': tex`\plate{tex/img/a.jpg}`,
    });
    const found = await read(root);
    assert.deepEqual(told(found.placements), [
      'other.tex:1:8 tex/img/a.jpg',
      'tex/parts/one.tex:1:8 tex/img/a.jpg',
      'tex/parts/one.tex:1:28 tex/img/b.c.png',
    ]);
    assert.deepEqual(found.placements[1].size, { width: 60 });
    assert.deepEqual(told(found.missing), ['tex/parts/one.tex:1:54 tex/img/no']);
  });

  it('read what a main file says that the settings do not name, and place nothing of it', async () => {
    const root = temporaryFolder({
      'latex/buch.tex': tex`\documentclass{book}\input{vorspann}\includegraphics{titel.jpg}\include{kapitel/eins}`,
      'latex/vorspann.tex': tex`\graphicspath{{../bilder/}}\newcommand{\tafel}[1]{\includegraphics[width=90mm]{#1}}`,
      'latex/kapitel/eins.tex': tex`\includegraphics{hafen}\tafel{gasse.jpg}`,
      'alt/entwurf.tex': tex`\graphicspath{{../alt/}}\input{../latex/vorspann}`,
      'README.adoc': ':imagesdir: no\n\ninclude::a.adoc[]\n',
      'a.adoc': 'image::bilder/titel.jpg[]\n',
      ...{ 'bilder/hafen.jpg': '', 'bilder/gasse.jpg': '', 'bilder/titel.jpg': '', 'alt/hafen.jpg': '' },
    });
    const found = await read(root, { layouts: ['latex/kapitel', 'a.adoc'] });
    assert.deepEqual(found.files, ['a.adoc', 'latex/kapitel/eins.tex']);
    assert.deepEqual(told(found.placements), [
      'latex/kapitel/eins.tex:1:18 bilder/hafen.jpg',
      'latex/kapitel/eins.tex:1:31 bilder/gasse.jpg',
      'a.adoc:1:8 bilder/titel.jpg',
    ]);
    assert.deepEqual([found.missing, found.notRead], [[], []]);
    assert.deepEqual(found.placements[1].size, { width: 90 });
    assert.deepEqual((await read(root, { layouts: [] })).files, []);
  });

  it('count what one that is named takes in as named too, be it through others, unless a pattern takes it away', async () => {
    const root = temporaryFolder({
      'book.tex': tex`\documentclass{book}\graphicspath{{bilder/}}\input{kapitel/zwei}\include{kapitel/eins}\input{weg}`,
      'kapitel/eins.tex': tex`\includegraphics{1}`,
      'kapitel/zwei.tex': tex`\includegraphics{2}\input{kapitel/tief}\input{book}`,
      'kapitel/tief.tex': tex`\includegraphics{3}\includegraphics{verloren}`,
      'weg.tex': tex`\includegraphics{4}\input{kapitel/nie}`,
      'kapitel/nie.tex': tex`\includegraphics{4}`,
      'alt.tex': tex`\input{kapitel/eins}\includegraphics{4}`,
      'book.adoc': 'include::teil.adoc[]\n',
      'teil.adoc': 'image::bilder/4.jpg[]\n',
      'book.typ': '#include "teil.typ"',
      'teil.typ': '#image("bilder/4.jpg", width: 40mm)',
      ...Object.fromEntries(['1', '2', '3', '4'].map(n => [`bilder/${n}.jpg`, ''])),
    });
    const { files, placements, missing } = await read(root, { layouts: ['book.tex', '!weg.tex'] });
    assert.deepEqual(files, ['book.tex', 'kapitel/eins.tex', 'kapitel/tief.tex', 'kapitel/zwei.tex']);
    assert.deepEqual(told(placements), [
      'kapitel/zwei.tex:1:18 bilder/2.jpg',
      'kapitel/tief.tex:1:18 bilder/3.jpg',
      'kapitel/eins.tex:1:18 bilder/1.jpg',
    ]);
    assert.deepEqual(told(missing), ['kapitel/tief.tex:1:37 bilder/verloren']);
    const placed = async (...layouts: string[]) => told((await read(root, { layouts })).placements);
    assert.deepEqual(await placed('book.adoc'), ['teil.adoc:1:8 bilder/4.jpg']);
    assert.deepEqual(await placed('book.typ'), ['teil.typ:1:9 bilder/4.jpg']);
    assert.deepEqual(await placed('kapitel/eins.tex'), ['kapitel/eins.tex:1:18 bilder/1.jpg']);
  });

  it('tell a text that they take in and that is not there, with its line, and none that need not be', async () => {
    const root = temporaryFolder({
      'latex/book.tex': tex`\documentclass{own}\usepackage{graphicx,none}
\input{glyphtounicode}\input{kapitel/eins}
\include{kapitel/zwei}\input{\jobname-extra}\input{data.txt}\input{../drei}`,
      'latex/kapitel/eins.tex': tex`\input{kapitel/vier}\input{fuenf}`,
      'latex/kapitel/fuenf.tex': '',
      'drei.tex': '',
      'book.adoc': 'include::eins.adoc[]\ninclude::zwei.adoc[opts=optional]\ninclude::{dir}/drei.adoc[]\n',
      'book.typ': '#include "eins.typ"\n#import "@preview/cetz:0.3.1": *\n',
      'leer.adoc': 'include::gross.adoc[]\n',
      'gross.adoc': ' '.repeat(5 * 1024 * 1024),
    });
    const everything = await read(root);
    assert.deepEqual(
      everything.notThere.map(({ file, line, path }) => `${file}:${line} ${path}`),
      [
        'book.adoc:1 eins.adoc',
        'book.typ:1 eins.typ',
        'latex/book.tex:3 kapitel/zwei.tex',
        'latex/kapitel/eins.tex:1 kapitel/vier.tex',
      ],
    );
    // of what is named alone, and what it takes in
    const named = await read(root, { layouts: ['leer.adoc'] });
    assert.deepEqual([named.notThere, named.notRead.map(({ path }) => path)], [[], ['gross.adoc']]);
    assert.deepEqual((await read(root, { layouts: ['book.typ'] })).notRead, []);
  });

  it('follow Typst into what is included, at its place, with the width of the page, and into functions of other files', async () => {
    const root = temporaryFolder({
      'typst/a.typ': '#image("/bilder/1.jpg", width: 50%)',
      'typst/buch.typ': `#set page(width: 240mm, height: 200mm, margin: 20mm)
#image("../bilder/2.jpg") #include "kapitel/z.typ"
#include "a.typ"`,
      'typst/kapitel/z.typ': `#import "../../vorlagen/bild.typ": *
#bild("3.jpg") #halb("4.jpg")`,
      'vorlagen/grund.typ': '#let grund(name) = image("../bilder/" + name, width: 100%)',
      'vorlagen/bild.typ': `#import "grund.typ": grund
#let bild(n) = grund(n)
#let halb(n) = image("deep/" + n, width: 40mm)`,
      ...Object.fromEntries(['1', '2', '3'].map(n => [`bilder/${n}.jpg`, ''])),
      'vorlagen/deep/4.jpg': '',
    });
    const pictures = ['bilder/2.jpg', 'bilder/3.jpg', 'vorlagen/deep/4.jpg', 'bilder/1.jpg'];
    const found = await read(root);
    assert.deepEqual(
      found.placements.map(({ picture }) => picture),
      pictures,
    );
    assert.deepEqual([found.missing, found.unread], [[], []]);
    assert.deepEqual([found.placements[3].size, found.placements[2].size], [{ width: 100 }, { width: 40 }]);
    const named = await read(root, { layouts: ['typst/kapitel/z.typ', 'typst/a.typ'] });
    assert.deepEqual(
      named.placements.map(({ picture }) => picture),
      pictures.slice(1),
    );
    assert.deepEqual(named.placements[2].size, { width: 100 });
    await relinkAll(root, noSettings, new Map([['bilder/3.jpg', 'bilder/3.jpg.rgb-neutral.png']]));
    assert.match(
      fs.readFileSync(path.join(root, 'typst/kapitel/z.typ'), 'utf8'),
      /#bild\("3\.jpg\.rgb-neutral\.png"\)/,
    );
  });

  it('look for a missing picture where they have it looked for, under one path, and have it in its place', async () => {
    const root = temporaryFolder({
      'latex/buch.tex': tex`\documentclass{book}\graphicspath{{../bilder/}{../bilder/teil zwei/}}\include{kapitel/eins}`,
      'latex/kapitel/eins.tex': tex`\includegraphics{a.jpg}\includegraphics{verloren.jpg}\includegraphics{b.jpg}`,
      'html/buch.html': '<img src="../bilder/b.jpg"><img src="../bilder/teil zwei/verloren.jpg">',
      'zwei.tex': tex`\includegraphics{fehlt}`,
      'drei/drei.tex': tex`\includegraphics{fehlt}`,
      ...{ 'bilder/a.jpg': '', 'bilder/b.jpg': '' },
    });
    const { missing, placements } = await read(root);
    assert.deepEqual(told(missing), [
      'drei/drei.tex:1:18 drei/fehlt',
      'html/buch.html:1:38 bilder/teil zwei/verloren.jpg',
      'latex/kapitel/eins.tex:1:41 bilder/teil zwei/verloren.jpg',
      'zwei.tex:1:18 fehlt',
    ]);
    assert.deepEqual(missing[2].folders, ['bilder', 'bilder/teil zwei']);
    assert.deepEqual([placements.length, ...missing.map(({ behind }) => behind)], [3, 0, 1, 2, 3]);
  });

  it('share the folder of images of an AsciiDoc document', async () => {
    const root = temporaryFolder({
      'main.adoc': 'image::x.jpg[]\n\n:imagesdir: img\n\ninclude::parts/one.adoc[]\n',
      'parts/one.adoc': 'image::a.jpg[]',
      'img/a.jpg': '',
      'x.jpg': '',
    });
    assert.deepEqual(told((await read(root)).placements), [
      'main.adoc:1:8 x.jpg',
      'parts/one.adoc:1:8 img/a.jpg',
    ]);
  });

  it('that include each other in a circle come to an end', async () => {
    const root = temporaryFolder({
      'a.tex': tex`\input{b}\includegraphics{x}`,
      'b.tex': tex`\input{a}\input{b}`,
      'x.png': '',
    });
    assert.deepEqual(told((await read(root)).placements), ['a.tex:1:27 x.png']);
  });

  it('find a name in either form of Unicode, and nothing through a link out of the book', async () => {
    const outside = temporaryFolder({ 'b.jpg': '' });
    const root = temporaryFolder({ 'x.md': '![](ä.jpg)\n![](out/b.jpg)', 'a\u0308.jpg': '' });
    fs.symlinkSync(outside, path.join(root, 'out'));
    const found = await read(root);
    assert.deepEqual(told(found.placements), ['x.md:1:5 a\u0308.jpg']);
    assert.deepEqual(told(found.missing), ['x.md:2:5 out/b.jpg']);
  });

  it('are what an editor has open where that is not saved; a text of no layout counts for nothing', async () => {
    const root = temporaryFolder({
      'main.tex': tex`\graphicspath{{a/}}\input{part}`,
      'part.tex': tex`\includegraphics{1.jpg}`,
      'a/1.jpg': '',
      'b/1.jpg': '',
      'b/2.jpg': '',
    });
    assert.deepEqual(told((await read(root)).placements), ['part.tex:1:18 a/1.jpg']);
    const open = new Map([
      ['main.tex', tex`\graphicspath{{b/}}\input{part}`],
      [
        'part.tex',
        tex`%%
\includegraphics{2.jpg}`,
      ],
      ['b/2.jpg', tex`\includegraphics{1.jpg}`],
    ]);
    const { placements, files } = await read(root, {}, open);
    assert.deepEqual(told(placements), ['part.tex:2:18 b/2.jpg']);
    assert.deepEqual(files, ['main.tex', 'part.tex']);
  });

  it('stop when cancelled', async () => {
    const root = temporaryFolder({ 'x.md': '' });
    const signal = AbortSignal.abort();
    await assert.rejects(resolvedLayouts(root, noSettings, { signal }), { name: 'AbortError' });
  });
});

import assert from 'node:assert/strict';
import { type LayoutKind, references, resolve, type Surroundings } from '../../src/layout';

/** Where the first picture of a text is found in a book of these files. */
function where(
  text: string,
  kind: LayoutKind,
  layoutFile: string,
  files: string[],
  surroundings?: Surroundings,
): string {
  const found = resolve(
    references(text, kind)[0],
    layoutFile,
    kind,
    path => files.includes(path),
    surroundings,
  );
  return 'path' in found ? `${found.kind} ${found.path}` : found.kind;
}

describe('where a picture lies', () => {
  it('is relative to the file', () => {
    assert.equal(where('![](../a.jpg)', 'markdown', 'text/one.md', ['a.jpg']), 'found a.jpg');
    assert.equal(where('![](./x/.././a.jpg)', 'markdown', 'one.md', ['a.jpg']), 'found a.jpg');
    assert.equal(where('a{b:url(a.jpg)}', 'css', 'css/x.css', ['a.jpg', 'css/a.jpg']), 'found css/a.jpg');
    assert.equal(where('#image("a.jpg")', 'typst', 'parts/x.typ', ['a.jpg']), 'missing parts/a.jpg');
  });

  it('is counted from a root above the file where it begins with a slash', () => {
    const files = ['site/img/a.jpg'];
    assert.equal(where('<img src="/img/a.jpg">', 'html', 'site/en/x.html', files), 'found site/img/a.jpg');
    assert.equal(where('#image("/img/a.jpg")', 'typst', 'site/x.typ', files), 'found site/img/a.jpg');
    assert.equal(where('![](/a.jpg)', 'markdown', 'deep/x.md', ['a.jpg', 'deep/a.jpg']), 'found a.jpg');
    assert.equal(where('![](/no.jpg)', 'markdown', 'deep/x.md', []), 'missing no.jpg');
  });

  it('may be written with percent codes that belong to the name', () => {
    assert.equal(where('![](a%20b.jpg)', 'markdown', 'x.md', ['a b.jpg', 'a%20b.jpg']), 'found a b.jpg');
    assert.equal(where('![](a%20b.jpg)', 'markdown', 'x.md', ['a%20b.jpg']), 'found a%20b.jpg');
    assert.equal(where('image::a%20b.jpg[]', 'asciidoc', 'x.adoc', ['a%20b.jpg']), 'found a%20b.jpg');
  });

  it('is nowhere in the book for other machines and for data', () => {
    for (const url of ['https://a.b/c.jpg', '//a.b/c.jpg', 'data:image/png;base64,AAAA', 'cid:x', 'blob:x'])
      assert.equal(where(`<img src="${url}">`, 'html', 'x.html', []), 'elsewhere', url);
    assert.equal(where(String.raw`\includegraphics{\folder/a.jpg}`, 'latex', 'x.tex', []), 'elsewhere');
    assert.equal(where('image::{unknown}/a.jpg[]', 'asciidoc', 'x.adoc', []), 'elsewhere');
  });

  it('is told where it leads out of the book', () => {
    assert.equal(where('![](../../a.jpg)', 'markdown', 'text/x.md', []), 'outside');
    assert.equal(where('<img src="file:///a.jpg">', 'html', 'x.html', []), 'outside');
    assert.equal(where('<img src="C:/a.jpg">', 'html', 'x.html', []), 'outside');
    assert.equal(where(String.raw`\includegraphics{/a.jpg}`, 'latex', 'x.tex', ['a.jpg']), 'outside');
  });

  it('in LaTeX: from the folder of the main file, with the folders it names, extension left out', () => {
    const text = String.raw`\graphicspath{{plates/}}\includegraphics{a}`;
    const main = { mainFolders: ['book'] };
    assert.equal(
      where(text, 'latex', 'book/parts/x.tex', ['book/plates/a.jpg'], main),
      'found book/plates/a.jpg',
    );
    assert.equal(
      where(text, 'latex', 'x.tex', ['a.jpg', 'a.png', 'plates/a.png']),
      'found a.png',
      'png before jpg',
    );
    assert.equal(where(text, 'latex', 'x.tex', ['plates/a.JPG']), 'found plates/a.JPG');
    assert.equal(where(String.raw`\includegraphics{a.b}`, 'latex', 'x.tex', ['a.b.jpg']), 'found a.b.jpg');
    assert.equal(where(text, 'latex', 'x.tex', []), 'missing plates/a');
  });

  it('in AsciiDoc: from the folder of images, of the main file too', () => {
    const text = ':imagesdir: img\nimage::a.jpg[]';
    assert.equal(where(text, 'asciidoc', 'x/y.adoc', ['x/a.jpg', 'x/img/a.jpg']), 'found x/img/a.jpg');
    assert.equal(
      where(text, 'asciidoc', 'x/y.adoc', ['img/a.jpg'], { mainFolders: [''] }),
      'found img/a.jpg',
    );
  });

  it('is not asked for where a text only names a file', () => {
    assert.equal(where('#f("a.jpg")', 'typst', 'x.typ', []), 'elsewhere');
    assert.equal(where('#f("a.jpg")', 'typst', 'x.typ', ['a.jpg']), 'found a.jpg');
  });
});

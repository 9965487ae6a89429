import assert from 'node:assert/strict';
import { type LayoutKind, pathFrom, references, relink, resolve } from '../../src/layout';

/** A text for each way in which a path can be written, its one picture called `old`. */
const places: [LayoutKind, string][] = [
  ['markdown', '![x](old.jpg){width=5cm} text'],
  ['markdown', '![x](<old.jpg> "t")'],
  ['markdown', '![x][r]\n\n[r]: old.jpg "t"\n'],
  ['markdown', '![x][r]\n\n[r]: <old.jpg>\n'],
  ['markdown', '| ![](old.jpg) | b |\n|---|---|\n'],
  ['markdown', '> ![a\n> b](old.jpg)'],
  ['markdown', 'a <img src="old.jpg"> b'],
  ['html', '<img src="old.jpg?v=1#x">'],
  ['html', "<img src='old.jpg'>"],
  ['html', '<img src=old.jpg alt=x>'],
  ['html', '<img srcset="old.jpg 2x">'],
  ['html', '<p style="background: url(old.jpg)">'],
  ['html', `<p style="background: url('old.jpg')">`],
  ['html', `<p style='background: url("old.jpg")'>`],
  ['html', '<style>p { background: url(old.jpg) }</style>'],
  ['css', 'p { background: url( old.jpg ) }'],
  ['css', 'p { background: url("old.jpg") }'],
  ['css', "p { background: url('old.jpg') }"],
  ['latex', String.raw`\includegraphics[width=3cm]{old.jpg}`],
  ['latex', String.raw`\includegraphics{{old}.jpg}`],
  ['latex', String.raw`\includegraphics{"old.jpg"}`],
  ['typst', '#image("old.jpg", width: 3cm)'],
  ['asciidoc', 'image::old.jpg[Alt]'],
  ['asciidoc', 'text image:old.jpg[Alt] text'],
];
const names = [
  'new.tif',
  'a folder/a new name.tif',
  'a.b.c (grey).tif',
  'Größe, 東京.tif',
  `it's.tif`,
  '50% [x] #1 {y} & co;.tif',
  'a&amp;b&copy.tif',
  'x_y*z~1.tif',
  ',a,.tif',
  'a:b.tif',
  '../up/one.tif',
  '(.tif',
];
/** Signs that a language cannot have in the name of a picture. */
const impossible: Partial<Record<LayoutKind, RegExp>> = { latex: /[{}#%]/ };

describe('relinking', () => {
  it('writes a path so that it is read again, and touches nothing else', () => {
    for (const [kind, text] of places)
      for (const name of names) {
        if (impossible[kind]?.test(name)) continue;
        const [before, ...none] = references(text, kind);
        assert.deepEqual(none, []);
        const changed = relink(text, before, name);
        const [after] = references(changed, kind);
        const how = `${kind} ${changed}`;
        assert.equal(after?.path.replace(/^\.\/(?=a:)/, ''), name, how);
        assert.equal(changed.slice(0, before.start), text.slice(0, before.start), how);
        assert.ok(changed.endsWith(text.slice(before.end)), how);
        assert.deepEqual(after.size, before.size, how);
      }
  });

  it('keeps percent codes where they were, braces for LaTeX where they are needed', () => {
    const once = (text: string, kind: LayoutKind, name: string) =>
      relink(text, references(text, kind)[0], name);
    assert.equal(once('![](%C3%BC.jpg)', 'markdown', 'ö.tif'), '![](%C3%B6.tif)');
    assert.equal(once('![](ü.jpg)', 'markdown', 'ö x.tif'), '![](ö%20x.tif)');
    assert.equal(
      once(String.raw`\includegraphics{a}`, 'latex', 'b.tif'),
      String.raw`\includegraphics{b.tif}`,
    );
    assert.equal(
      once(String.raw`\includegraphics{a}`, 'latex', 'x.y/b.c d.tif'),
      String.raw`\includegraphics{{x.y/b.c d}.tif}`,
    );
    assert.equal(
      once(String.raw`\includegraphics{"a"}`, 'latex', 'b c.tif'),
      String.raw`\includegraphics{"b c.tif"}`,
    );
  });

  it('leaves byte order mark and line ends alone', () => {
    const text = '\uFEFFa\r\n![](old.jpg)\rb\n\r\n';
    assert.equal(relink(text, references(text, 'markdown')[0], 'n.jpg'), '\uFEFFa\r\n![](n.jpg)\rb\n\r\n');
  });
});

describe('the path to another picture', () => {
  const from = (text: string, kind: LayoutKind, file: string, old: string, picture: string) => {
    const [reference] = references(text, kind);
    const found = resolve(reference, file, kind, path => path === old);
    assert.ok(found.kind === 'found');
    return pathFrom(reference, found, picture);
  };

  it('counts from the same folder, in the same form', () => {
    assert.equal(from('![](../p/a.jpg)', 'markdown', 't/x.md', 'p/a.jpg', 'p/a.tif'), '../p/a.tif');
    assert.equal(from('![](./a.jpg)', 'markdown', 'x.md', 'a.jpg', 'g/a.tif'), './g/a.tif');
    assert.equal(from('![](./a.jpg)', 'markdown', 't/x.md', 't/a.jpg', 'a.tif'), '../a.tif');
    assert.equal(from('![](/p/a.jpg)', 'markdown', 's/x.md', 's/p/a.jpg', 's/q/a.tif'), '/q/a.tif');
    assert.equal(from('![](/p/a.jpg)', 'markdown', 's/x.md', 's/p/a.jpg', 'q/a.tif'), null);
    assert.equal(from('#image("/p/a.jpg")', 'typst', 's/x.typ', 'p/a.jpg', 'p/b.jpg'), '/p/b.jpg');
  });

  it('counts from the folder that the source names beside it', () => {
    const tex = String.raw`\graphicspath{{plates/}}\includegraphics{a}`;
    assert.equal(from(tex, 'latex', 'x.tex', 'plates/a.jpg', 'plates/a-grey.jpg'), 'a-grey.jpg');
    assert.equal(
      from(':imagesdir: p\nimage::a.jpg[]', 'asciidoc', 'x.adoc', 'p/a.jpg', 'q/a.jpg'),
      '../q/a.jpg',
    );
    assert.equal(from('<base href="p/"><img src="a.jpg">', 'html', 'x.html', 'p/a.jpg', 'a.tif'), '../a.tif');
  });

  it('leaves out what a macro adds, or is not possible', () => {
    const tex = String.raw`\newcommand{\p}[1]{\includegraphics{plates/#1.jpg}}\p{a}`;
    assert.equal(from(tex, 'latex', 'x.tex', 'plates/a.jpg', 'plates/b.jpg'), 'b');
    assert.equal(from(tex, 'latex', 'x.tex', 'plates/a.jpg', 'plates/b.tif'), null);
  });
});

import assert from 'node:assert/strict';
import { parseLayout, references } from '../../../src/layout';
import { paths, sizes, written } from '../support/placed';

describe('pictures in Markdown', () => {
  it('are images in every form, by name or by definition', () => {
    const text = [
      '![a](one.jpg) and ![b](<two three.jpg> "title") and ![c](f(o)ur.jpg)',
      '![full][Def  One], ![collapsed][], ![shortcut]',
      '[![linked](small.jpg)](large.jpg) [no](link.jpg)',
      '',
      '[def one]: five.tif "title"',
      '[collapsed]:',
      '  <six seven.tif>',
      '[shortcut]: eight.tif',
      '[unused]: nine.tif',
    ].join('\n');
    assert.deepEqual(paths(text, 'markdown'), [
      ...['one.jpg', 'two three.jpg', 'f(o)ur.jpg', 'small.jpg', 'five.tif', 'six seven.tif', 'eight.tif'],
    ]);
  });

  it('stand in quotations, lists, tables, headings and footnotes', () => {
    const text = [
      '# ![](head.png) #',
      'under\n![](line.png)\n=====',
      '> - ![alt\n>   text](quoted.png)',
      '',
      '| a | b |',
      '|---|---|',
      '| ![](cell.png) | `![](no.png)` |',
      '',
      '[^1]: ![](footnote.png)',
    ].join('\n');
    assert.deepEqual(paths(text, 'markdown'), [
      ...['head.png', 'line.png', 'quoted.png', 'cell.png', 'footnote.png'],
    ]);
  });

  it('are none in code, comments and escapes', () => {
    const text = [
      '`![](no.png)` \\![](link.png) <!-- ![](no.png) -->',
      '',
      '    ![](no.png)',
      '',
      '```',
      '![](no.png) <img src="no.png">',
      '```',
      '~~~\n![](no.png)\n~~~',
      '<!--',
      '![](no.png) <img src="no.png">',
      '-->',
      '![](yes.png)',
    ].join('\n');
    assert.deepEqual(paths(text, 'markdown'), ['yes.png']);
  });

  it('are not swallowed by a link that is none, nor made of control characters', () => {
    assert.deepEqual(paths('[a [b](c)](![](yes.png))', 'markdown'), ['yes.png'], 'links hold no links');
    assert.deepEqual(paths('![](no\x7f.png) ![](no\x01.png)', 'markdown'), []);
  });

  it('are inline HTML too, whatever stands between its tags', () => {
    const text = [
      'Text <img src="a.png" alt="![](no.png)"> text',
      '',
      '<picture>',
      '<source srcset="b.avif 1x, c.avif 2x">',
      '<img src=d.jpg>',
      '</picture>',
      '',
      '> <figure>',
      '> <img',
      '> src="e.png">',
      '> </figure>',
    ].join('\n');
    assert.deepEqual(paths(text, 'markdown'), ['a.png', 'b.avif', 'c.avif', 'd.jpg', 'e.png']);
  });

  it('are decoded: escapes, entities, percent codes, no query', () => {
    const text =
      '![](a%20b.jpg) ![](c\\_d.jpg) ![](e&amp;f.jpg) ![](%C3%BC.jpg) ![](g.jpg?x=1#y) ![](h%zz.jpg) ![](%FF.jpg)';
    assert.deepEqual(paths(text, 'markdown'), [
      ...['a b.jpg', 'c_d.jpg', 'e&f.jpg', 'ü.jpg', 'g.jpg', 'h%zz.jpg', '%FF.jpg'],
    ]);
    assert.deepEqual(written(text, 'markdown'), [
      ...['a%20b.jpg', 'c\\_d.jpg', 'e&amp;f.jpg', '%C3%BC.jpg', 'g.jpg', 'h%zz.jpg', '%FF.jpg'],
    ]);
    assert.equal(references(text, 'markdown')[0].literal, 'a%20b.jpg');
  });

  it('have the place of their path, behind a byte order mark and with any line end', () => {
    for (const end of ['\n', '\r\n', '\r']) {
      const text = `\uFEFF---${end}title: x${end}---${end}${end}Text ![ü](pläte.jpg)`;
      const [{ start, line, column }] = references(text, 'markdown');
      assert.equal(text.slice(start, start + 9), 'pläte.jpg');
      assert.deepEqual([line, column], [5, 11]);
    }
  });

  it('have the size that attributes say', () => {
    const text = [
      '![](a.jpg){width=50%} ![](b.jpg){#id .class width="80mm" height=2in} ![](c.jpg){: height="300"}',
      '![](d.jpg) {width=50%} ![](e.jpg){width=3em} <img src="f.jpg" style="width: 6cm">',
      '',
      '[a.jpg]: x',
    ].join('\n');
    assert.deepEqual(sizes(text, 'markdown', { textWidth: 160 }), [
      'a.jpg: 80 x -',
      'b.jpg: 80 x 50.8',
      'c.jpg: - x 79.4',
      'd.jpg: unknown',
      'e.jpg: unknown',
      'f.jpg: 60 x -',
    ]);
    assert.equal(sizes(text, 'markdown')[0], 'a.jpg: unknown', 'nobody said how wide the text is');
  });

  it('may be named in front matter, for a template to place', () => {
    const text = '---\ntitle: A.B\ncover: "front/a b.jpg"\nback: back.tif\n---\n![](c.jpg)\n';
    assert.deepEqual(paths(text, 'markdown'), ['(front/a b.jpg)', '(back.tif)', 'c.jpg']);
    assert.deepEqual(written(text, 'markdown'), ['front/a b.jpg', 'back.tif', 'c.jpg']);
  });

  it('have the sizes of style sheets, which attributes with a unit go before', () => {
    const text = [
      '![](a.jpg) ![](b.jpg){.half #one} ![](c.jpg){.half width=60mm} ![](d.jpg){.half width=300}',
      '',
      '<img src="e.jpg" class="half">',
    ].join('\n');
    const styles = ['img { height: 40mm } .half { width: 50% }', '#one { width: 70mm }'];
    assert.deepEqual(sizes(text, 'markdown', { textWidth: 200, inherited: { styles } }), [
      ...['a.jpg: - x 40', 'b.jpg: 70 x 40', 'c.jpg: 60 x 40', 'd.jpg: 100 x 40', 'e.jpg: 100 x 40'],
    ]);
    const inParagraph = { inherited: { styles: ['p > img { width: 9mm } div img { width: 8mm }'] } };
    assert.deepEqual(sizes('![](a.jpg)', 'markdown', inParagraph), ['a.jpg: 9 x -']);
  });

  it('name their style sheets in front matter, as a word, as a list or under a format, and in HTML', () => {
    const stylesOf = (text: string) => parseLayout(text, 'markdown').styles;
    assert.deepEqual(stylesOf('---\ntitle: A\ncss: "book.css"\n---\n'), ['book.css']);
    assert.deepEqual(stylesOf('---\r\ncss:\r\n  - a.css\r\n  - b.css # why\r\n---\r\n'), ['a.css', 'b.css']);
    assert.deepEqual(stylesOf('---\nformat:\n  html:\n    css: [a.css, 3]\n...\n'), ['a.css']);
    assert.deepEqual(stylesOf('css: no.css\n\n<link rel="stylesheet" href="c%20d.css">\n'), ['c d.css']);
    assert.deepEqual(stylesOf('---\ncss: [\n---\n'), []);
  });
});

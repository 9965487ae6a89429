import assert from 'node:assert/strict';
import { parseLayout } from '../../../src/layout';
import { paths, sizes, written } from '../support/placed';

describe('pictures in Typst', () => {
  it('are calls of image wherever code stands', () => {
    const text = `#image("a.jpg") #figure(image("b c.jpg"), caption: [With #image("d.png") in it])
#let x = image("e.jpg")
#{ let y = 1; image("f.jpg") }
#grid(columns: 2,
  image("g.jpg"), [Text #box(image("/h.jpg")).],
)
#if true [ #image("i.jpg") ] else { image("j.jpg") }
Words (#image("k.jpg")), "#image("l.jpg")".
$ x #image("m.jpg") $`;
    assert.deepEqual(
      paths(text, 'typst'),
      ['a', 'b c', 'd', 'e', 'f', 'g', '/h', 'i', 'j', 'k', 'l', 'm'].map(name =>
        name === 'd' ? 'd.png' : `${name}.jpg`,
      ),
    );
  });

  it('are none in comments, raw text, words and other calls', () => {
    const text = `// #image("no.jpg")
/* #image("no.jpg") /* nested */ #image("no.jpg") */
\`#image("no.jpg")\`
\`\`\`typ
#image("no.jpg")
\`\`\`
image("no.jpg") \\#image("no.jpg") https://a.b/c #image("yes.jpg")
#text("image(\\"no\\")")`;
    assert.deepEqual(paths(text, 'typst'), ['yes.jpg']);
  });

  it('may be named in strings, for what is not known to place', () => {
    const text = `#plate("a.tif")
#let all = ("b.jpg", "c.jpg")
#for p in all { image(p) }
#text("words")`;
    assert.deepEqual(paths(text, 'typst'), ['(a.tif)', '(b.jpg)', '(c.jpg)']);
    assert.deepEqual(parseLayout(text, 'typst').unread, [3]);
  });

  /** The whole path, and its width. */
  const placed = (text: string) =>
    parseLayout(text, 'typst').references.map(
      ({ before, path, after, size, certain }) =>
        `${before}|${path}|${after} ${certain ? (size?.width ?? '-') : 'perhaps'}`,
    );

  it('are followed through functions that put them together', () => {
    const text = `#let bild(name) = image("bilder/" + name, width: 50mm)
#bild("turm.jpg") #figure(bild("b c.png"), caption: [x])
#let klein(breite: 3cm, titel, name) = { figure(caption: titel, image(name + ".jpg", width: breite)) }
#klein([Titel, mit Komma], "gasse")
#let tafel = (name) => bild("tafeln/" + name)
#tafel("1.jpg")
#let seite(bild: none) = if bild != none { image("seiten/" + bild) }
#seite(bild: "2.jpg") #seite()
#{ let innen = n => image(n); innen("3.jpg") }
#let breit(
  name,
) = image(
  "breit/" + name,
)
#breit("4.jpg")`;
    assert.deepEqual(placed(text), [
      'bilder/|turm.jpg| 50',
      'bilder/|b c.png| 50',
      '|gasse|.jpg -',
      'bilder/tafeln/|1.jpg| 50',
      'seiten/|2.jpg| -',
      '|3.jpg| -',
      'breit/|4.jpg| -',
    ]);
    assert.deepEqual(parseLayout(text, 'typst').unread, []);
  });

  it('are followed through names of strings and through lists', () => {
    const text = `#let ordner = "bilder/"
#image(ordner + "a.jpg") #image("teil/" + "b" + ".jpg")
#for n in ("1", "2",) { image(ordner + n + ".jpg", width: 2cm) }
#let titel = "titel.jpg"
#image(titel)`;
    assert.deepEqual(placed(text), [
      'bilder/|a.jpg| -',
      'teil/|b|.jpg -',
      'bilder/|1|.jpg 20',
      'bilder/|2|.jpg 20',
      '|titel.jpg| -',
    ]);
    assert.deepEqual(parseLayout(text, 'typst').unread, []);
  });

  it('are told by their line where nobody can follow them', () => {
    const text = `#let bild(n) = image("bilder/" + n)
#let nummer(n) = image("p/" + str(n) + ".jpg")
#for n in range(3) { bild(str(n)) }
#("a", "b").map(bild)
#image(data.at("bild"))
#show figure.where(kind: image): set text(red)
#bild(n) #nummer(3)`;
    assert.deepEqual(parseLayout(text, 'typst').unread, [2, 3, 4, 5, 7]);
    assert.deepEqual(placed(text), []);
  });

  it('have the files beside them that are taken in, by keyword', () => {
    const text = `#include "kapitel/eins.typ"
#import "bilder.typ": bild, tafel
#import "@preview/paket:1.0.0": *
#{ include "zwei.typ" } "include" #text("no.typ")`;
    assert.deepEqual(
      parseLayout(text, 'typst').includes.map(({ path, namesOnly }) => [path, namesOnly ?? false]),
      [
        ['kapitel/eins.typ', false],
        ['bilder.typ', true],
        ['zwei.typ', false],
      ],
    );
  });

  it('have names with escapes', () => {
    const text = '#image("a\\"b\\\\c\\u{fc}.jpg")';
    assert.deepEqual(paths(text, 'typst'), ['a"b\\cü.jpg']);
    assert.deepEqual(written(text, 'typst'), ['a\\"b\\\\c\\u{fc}.jpg']);
  });

  it('have the size that the call, a set rule and the page say', () => {
    const text = `#set page(width: 200mm, height: 250mm, margin: (x: 20mm, y: 10mm))
#image("a", width: 80mm) #image("b", height: 2in, width: 5cm, fit: "contain")
#image("c", width: 50%) #figure(image("d", width: 100%))
#box(width: 50%)[#image("e", width: 50%)]
#block(width: 60mm, image("f", width: 50%))
#align(center)[#image("k", width: 50%)] #box[#image("l", width: 50%)]
#grid(columns: 2, image("g", width: 100%))
#[
#set image(width: 30mm)
#image("h") #image("i", width: 1cm)
]
#image("j")`;
    assert.deepEqual(sizes(text, 'typst'), [
      'a: 80 x -',
      'b: 50 x 50.8 fits',
      'c: 80 x -',
      'd: 160 x -',
      'e: 40 x -',
      'f: 30 x -',
      'k: 80 x -',
      'l: unknown',
      'g: unknown',
      'h: 30 x -',
      'i: 10 x -',
      'j: unknown',
    ]);
    assert.equal(sizes(text, 'typst', { textWidth: 100 })[2], 'c: 50 x -', 'settings go before the document');
    const paper = (rule: string) => sizes(`#set page(${rule})\n#image("a", width: 100%)`, 'typst')[0];
    assert.equal(paper('paper: "a5", margin: 14mm'), 'a: 120 x -');
    assert.equal(paper('paper: "a5", flipped: true, margin: (inside: 20mm, outside: 10mm)'), 'a: 180 x -');
    assert.equal(paper('paper: "a4"'), 'a: 160 x -', '2.5/21 of the shorter edge on each side');
    assert.equal(paper('fill: white'), 'a: unknown');
  });

  it('are made out in broken text', () => {
    assert.deepEqual(paths(')]} #image("a.jpg" #[ #image("b.jpg") ( "c', 'typst'), ['(a.jpg)', 'b.jpg']);
  });
});

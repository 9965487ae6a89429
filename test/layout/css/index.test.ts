import assert from 'node:assert/strict';
import { paths, sizes, written } from '../support/placed';

describe('pictures in CSS', () => {
  it('are URLs in any form, in any property', () => {
    const text = `
      .a { background: url(a.jpg) no-repeat; }
      .b { background-image: URL( "b c.jpg" ), linear-gradient(red, blue), url('d.jpg') }
      .c::before { content: url(e\\ f.jpg); list-style: url(g.png) }
      .d { background-image: image-set("h.avif" type("image/avif"), url(i.jpg) 2x) }
      @media print { .e { --plate: url(j.tif) } .f { &:hover { background: url(k.jpg) } } }
      @page { background: url(l.jpg) }`;
    assert.deepEqual(paths(text, 'css'), [
      ...['a.jpg', 'b c.jpg', 'd.jpg', 'e f.jpg', 'g.png', 'h.avif', 'i.jpg', 'j.tif', 'k.jpg', 'l.jpg'],
    ]);
    assert.ok(written(text, 'css').includes('e\\ f.jpg'));
  });

  it('are none in comments, imports, fonts and strings of other kinds', () => {
    const text = `/* url(no.jpg) */ @import url(no.css); @import "no.css"; @namespace url(no);
      @font-face { src: url(no.woff2) } .a { content: "no.jpg"; } a[href="no.jpg"] { color: red }`;
    assert.deepEqual(paths(text, 'css'), []);
  });

  it('have the size that the background is given', () => {
    const text = `
      .a { background: url(a) center / 120mm auto }
      .b { background-image: url(b), url(c); background-size: 5cm 4cm, auto 2in }
      .d { background: url(d); background-size: cover; width: 200mm; height: 150mm }
      .e { background: url(e) 0 0 / contain; width: 200mm; height: 150mm }
      .f { background: url(f); background-size: 50%; width: 10cm }
      .g { background: url(g); background-size: cover }`;
    assert.deepEqual(sizes(text, 'css'), [
      'a: 120 x -',
      'b: 50 x 40',
      'c: - x 50.8',
      'd: 200 x 150',
      'e: 200 x 150 fits',
      'f: 50 x -',
      'g: unknown',
    ]);
  });

  it('are made out in broken text', () => {
    assert.deepEqual(paths('.a { color: ] } .b { background: url("b.jpg', 'css'), ['b.jpg']);
    assert.deepEqual(paths('}} .a { color: ; background: url(a.jpg)', 'css'), ['a.jpg']);
  });
});

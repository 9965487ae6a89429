import assert from 'node:assert/strict';
import { references } from '../../../src/layout';
import { paths, sizes, written } from '../support/placed';

describe('pictures in HTML', () => {
  it('are those of every element that shows one', () => {
    const text = `
      <IMG SRC="a.jpg"><img src='b c.jpg'><img src=d.jpg>
      <picture><source srcset="e.avif 800w, f.avif 1600w" media="print"><img src="g.jpg"></picture>
      <svg><image href="h.png"/><image xlink:href="i.png"/></svg>
      <video poster="j.jpg"></video>
      <div style="background-image: url(k.jpg), url('l.jpg')"></div>
      <style>.a { background: url("m.jpg") } </style>
      <object data="n.svg"></object>`;
    assert.deepEqual(paths(text, 'html'), [
      ...[
        'a.jpg',
        'b c.jpg',
        'd.jpg',
        'e.avif',
        'f.avif',
        'g.jpg',
        'h.png',
        'i.png',
        'j.jpg',
        'k.jpg',
        'l.jpg',
      ],
      ...['m.jpg', '(n.svg)'],
    ]);
  });

  it('are none in comments, scripts and text', () => {
    const text =
      '<!-- <img src="no.jpg"> --><script>"<img src=no.jpg>"</script><textarea><img src=no.jpg></textarea>&lt;img src="no.jpg"&gt;<img alt=x><img src="">';
    assert.deepEqual(paths(text, 'html'), []);
  });

  it('are read in sets with commas and densities in any form', () => {
    const text = '<img srcset=" a,b.jpg 1x ,c.jpg, d.jpg 2x,e.jpg (f, g) 3x, h.jpg">';
    assert.deepEqual(paths(text, 'html'), ['a,b.jpg', 'c.jpg', 'd.jpg', 'e.jpg', 'h.jpg']);
  });

  it('are decoded through attribute and style, each with the place of its own text', () => {
    const text = `<img src="a&amp;b%20c.jpg?v=2"><p style='background: url("d&#39;e\\66.jpg")'>`;
    assert.deepEqual(paths(text, 'html'), ['a&b c.jpg', "d'ef.jpg"]);
    assert.deepEqual(written(text, 'html'), ['a&amp;b%20c.jpg', 'd&#39;e\\66.jpg']);
  });

  it('have the size that attributes and styles say; a style goes before', () => {
    const text = `<img src=a width=300><img src=b width="50%" height=96>
      <img src=c style="width: 12cm" width=300><img src=d style="height:4in;object-fit:contain;width:80mm">
      <table><td><img src=e width="100%"></td></table><img src=f style="width:10vw">`;
    assert.deepEqual(sizes(text, 'html', { textWidth: 200 }), [
      'a: 79.4 x -',
      'b: 100 x 25.4',
      'c: 120 x -',
      'd: 80 x 101.6 fits',
      'e: unknown',
      'f: unknown',
    ]);
  });

  it('count from the base that the page names', () => {
    const [{ path, before }] = references('<base href="plates/x.html"><img src="a.jpg">', 'html');
    assert.deepEqual([before, path], ['plates/', 'a.jpg']);
  });
});

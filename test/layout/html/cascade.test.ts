import assert from 'node:assert/strict';
import { parseLayout } from '../../../src/layout';
import { sizes } from '../support/placed';

describe('sizes that style sheets say', () => {
  const page = (css: string, body: string) =>
    sizes(`<style>${css}</style>${body}`, 'html', { textWidth: 160 });

  it('are those of the strongest rule that selects the picture', () => {
    const css = `
      img { width: 100mm }
      .plate, figure > .full { width: 120mm; height: 90mm; object-fit: contain }
      #one { width: 40mm }
      div .plate { width: 50mm }
      img.small { width: 5cm }
      img { height: 70mm }`;
    assert.deepEqual(
      page(
        css,
        `<img src=a><img src=b class="x plate"><img src=c id=one class=plate><div><p><img src=d class=plate></p></div>
        <figure><img src=e class=full></figure><figure><p><img src=f class=full></p></figure>
        <img src=g class=small><img src=h class=plate style="width:30mm">`,
      ),
      [
        'a: 100 x 70',
        'b: 120 x 90 fits',
        'c: 40 x 90 fits',
        'd: 50 x 90 fits',
        'e: 120 x 90 fits',
        'f: 100 x 70',
        'g: 50 x 70',
        'h: 30 x 90 fits',
      ],
    );
  });

  it('hold in print, not on screens of one kind or another', () => {
    const css = `
      @media screen { .a { width: 10mm } } @media print { .a { width: 20mm } } @media (min-width: 5cm) { .a { width: 30mm } }
      @layer x { @media print, screen { .b { width: 40mm } } } @media not print { .b { width: 50mm } }
      @page { .c { width: 60mm } } .d { .c { width: 70mm } }`;
    assert.deepEqual(page(css, '<img src=a class=a><img src=b class=b><img src=c class=c>'), [
      'a: 20 x -',
      'b: 40 x -',
      'c: unknown',
    ]);
  });

  it('leave out what a text does not tell', () => {
    const css =
      'img:hover { width: 10mm } img[alt] { width: 20mm } p + img { width: 30mm } img::before { width: 40mm }';
    assert.deepEqual(page(css, '<p></p><img src=a alt=x>'), ['a: unknown']);
  });

  it('are shares of the element round the picture', () => {
    const css = `.half { width: 50% } .box { width: 80mm } .row { display: flex } img { width: 100% } .auto { width: auto }`;
    assert.deepEqual(
      page(
        css,
        `<img src=a><div class=half><img src=b><div class=half><img src=c></div></div><div class=box><img src=d></div>
        <div class=row><img src=e></div><div class=auto><img src=f></div><div style="width:9em"><img src=g></div>
        <table><td><img src=h></td><td style="width:70mm"><img src=i></td></table><img src=j>`,
      ),
      [
        'a: 160 x -',
        'b: 80 x -',
        'c: 40 x -',
        'd: 80 x -',
        'e: unknown',
        'f: 160 x -',
        'g: unknown',
        'h: unknown',
        'i: 70 x -',
        'j: 160 x -',
      ],
    );
  });

  it('come from linked sheets too, weaker than those of the page', () => {
    const html =
      '<link rel=stylesheet href="a%20b.css"><link rel=stylesheet media=screen href=no.css><img src=a class=a>';
    assert.deepEqual(parseLayout(html, 'html').styles, ['a b.css']);
    const inherited = { styles: ['.a { width: 30mm } img { height: 9mm }'] };
    assert.deepEqual(sizes(html, 'html', { inherited }), ['a: 30 x 9']);
    assert.deepEqual(sizes(`<style>.a { width: 40mm }</style>${html}`, 'html', { inherited }), ['a: 40 x 9']);
  });
});

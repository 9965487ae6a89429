import assert from 'node:assert/strict';
import { type LayoutKind, takes } from '../../../src/layout';
import { linesIn, unplaceable } from '../../../src/remedy/plan/placing';

describe('what a line of a layout can place', () => {
  const at = (path: string, inks = false) => ({ path, inks });
  const kinds: LayoutKind[] = ['markdown', 'html', 'css', 'asciidoc', 'latex', 'typst'];

  it('is a PNG in every language, and a TIFF in none', () => {
    for (const kind of kinds) {
      assert.deepEqual(
        [takes(kind, 'a.PNG'), takes(kind, 'a.jpg'), takes(kind, 'a.tif')],
        [true, true, false],
      );
      assert.equal(unplaceable(kind, at('a.jpg'), at('a.jpg.rgb-neutral.png')), null);
    }
  });

  it('is no black ink alone on the web and in Typst, and in LaTeX as a JPEG', () => {
    for (const kind of kinds) {
      const tiff = unplaceable(kind, at('a.jpg'), at('a.jpg.black-only.tif', true))!;
      assert.match(
        tiff,
        /^"a\.jpg" stays on the page: .* no TIFF.*another encoding, or place "a\.jpg\.black-only\.tif" yourself/,
      );
      assert.equal(/--as jpeg/.test(tiff), kind === 'latex', kind);
      const jpeg = unplaceable(kind, at('a.jpg'), at('a.black-only.jpg', true));
      assert.equal(jpeg === null, kind === 'latex', kind);
    }
    assert.match(
      unplaceable('html', at('a.jpg'), at('a.black-only.jpg', true))!,
      /^"a\.jpg" stays on the page: browsers show a JPEG of inks in other colours.*would be lost/,
    );
  });

  it('is what the line places already: a TIFF, or inks', () => {
    assert.equal(unplaceable('markdown', at('a.tif'), at('a.black-only.tiff', true)), null);
    assert.equal(unplaceable('markdown', at('a.jpg', true), at('a.black-only.jpg', true)), null);
  });

  it('is told with the way out where a TIFF was asked for', () =>
    assert.match(
      unplaceable('typst', at('a.jpg'), at('a.jpg.rgb-neutral.tif'))!,
      /^"a\.jpg" stays on the page: Typst takes no TIFF\. Ask for PNG/,
    ));
});

describe('lines of layouts', () => {
  const line = { file: 'book.md', line: 1 };
  const placements = new Map([
    ['x/a.jpg', [line]],
    ['link.jpg', [line]],
  ]);

  it('count by either name of a picture, and only where they are to place its result', () => {
    const asked = { path: 'x/a.jpg', link: 'link.jpg' };
    assert.deepEqual(linesIn(placements, '/book', true).of(asked), [line, line]);
    assert.deepEqual(linesIn(placements, '/book', true).of({ path: 'b.jpg', link: null }), []);
    assert.deepEqual(linesIn(placements, '/book', false).of(asked), []);
  });

  it('are found by the file that they place', () => {
    const { at } = linesIn(placements, '/book', false);
    assert.deepEqual([at('/book/x/a.jpg'), at('/book/x/b.jpg')], [[line], []]);
  });
});

import assert from 'node:assert/strict';
import { type LayoutKind, takes } from '../../../src/layout';
import { linesIn, placingWords, unplaceable } from '../../../src/remedy/plan/placing';

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

  it('is no black ink alone on the web, and as a JPEG alone in LaTeX and in Typst', () => {
    for (const kind of kinds) {
      const tiff = unplaceable(kind, at('a.jpg'), at('a.jpg.black-only.tif', true))!;
      assert.match(
        tiff,
        /^"a\.jpg" stays on the page: .* no TIFF.*another encoding, or place "a\.jpg\.black-only\.tif" yourself/,
      );
      const placesInks = kind === 'latex' || kind === 'typst';
      assert.equal(/--as jpeg/.test(tiff), placesInks, kind);
      const jpeg = unplaceable(kind, at('a.jpg'), at('a.black-only.jpg', true));
      assert.equal(jpeg === null, placesInks, kind);
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

  it('is told by its own extension where that is what is not taken', () => {
    assert.match(
      unplaceable('latex', at('a.jpg'), at('b.rgb-neutral.jfif'))!,
      /: pdfTeX takes no "\.jfif"\. Ask for PNG/,
    );
    assert.equal(unplaceable('typst', at('a.jfif'), at('a.rgb-neutral.jfif')), null);
  });
});

describe('lines of layouts', () => {
  const line = { file: 'book.md', line: 1 };
  const placements = new Map([
    ['x/a.jpg', [line]],
    ['link.jpg', [line]],
    ['x/b.rgb-neutral.jpg', [line]],
  ]);
  const earlierOf = ({ path }: { path: string }) => (path === 'b.jpg' ? ['x/b.rgb-neutral.jpg'] : []);

  it('count by either name of a picture, and only where they are to place its result', () => {
    const asked = { path: 'x/a.jpg', link: 'link.jpg' };
    assert.deepEqual(linesIn(placements, '/book', true, earlierOf).of(asked), [line, line]);
    assert.deepEqual(linesIn(placements, '/book', true, earlierOf).of({ path: 'c.jpg', link: null }), []);
    assert.deepEqual(linesIn(placements, '/book', true, earlierOf).of({ path: 'b.jpg', link: null }), [line]);
    assert.deepEqual(linesIn(placements, '/book', false, earlierOf).of({ path: 'b.jpg', link: null }), []);
    assert.deepEqual(linesIn(placements, '/book', false, earlierOf).of(asked), []);
  });

  it('are found by the file that they place', () => {
    const { at } = linesIn(placements, '/book', false, earlierOf);
    assert.deepEqual([at('/book/x/a.jpg'), at('/book/x/b.jpg')], [[line], []]);
  });
});

describe('what is said before a result is made for layouts to place', () => {
  const web = { file: 'page.html', line: 2 };
  const tex = { file: 'book.tex', line: 9 };
  const jpeg = { path: 'x/a.jpg', inks: false };

  it('is that it is a PNG, where it would be a TIFF', () => {
    assert.deepEqual(placingWords([tex, web], jpeg, { format: 'tiff', to: 'rgb-neutral' }), [
      'Where the layouts are to place the result, it is a PNG instead: pdfTeX takes no TIFF, and book.tex:9 is to place it.',
    ]);
  });

  it('is each way in which lines could not place it, once', () => {
    const words = placingWords([web, tex, { ...web, line: 4 }], jpeg, { format: 'tiff', to: 'black-only' });
    assert.equal(words.length, 2);
    assert.match(
      words[0],
      /^page\.html:2 and 1 more could not place the result\. "x\/a\.jpg" stays on the page: /,
    );
    assert.match(words[0], /place "x\/a\.jpg\.black-only\.tif" yourself/);
    assert.match(words[1], /^book\.tex:9 could not.*--as jpeg/);
  });

  it('is nothing where they can, or where none is to', () => {
    assert.deepEqual(placingWords([web], jpeg, { format: 'jpeg', to: 'single-channel' }), []);
    assert.deepEqual(placingWords([], jpeg, { format: 'tiff', to: 'black-only' }), []);
    const tiff = { path: 'a.tif', inks: true };
    assert.deepEqual(placingWords([web], tiff, { format: 'tiff', to: 'black-only' }), []);
  });
});

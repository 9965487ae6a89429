import assert from 'node:assert/strict';
import { jpegKeepsInks, shows, takes, toolOf } from '../../src/layout';

// Sources beside the table in src/layout/takes.ts.
describe('what the tool of a layout can place', () => {
  it('is told by the extension, in any case', () => {
    for (const kind of ['markdown', 'html', 'css', 'asciidoc'] as const) {
      assert.deepEqual(
        ['a.JPG', 'b/a.b.png', 'a.webp', 'a.tif', 'a.psd', 'tif'].map(name => takes(kind, name)),
        [true, true, true, false, false, false],
      );
      assert.equal(shows(kind), 'browsers show');
    }
    assert.deepEqual(
      ['a.jpeg', 'a.pdf', 'a.webp', 'a.tiff'].map(name => takes('latex', name)),
      [true, true, false, false],
    );
    assert.deepEqual(
      ['a.jpg', 'a.jfif', 'a.webp', 'a.tif'].map(name => takes('typst', name)),
      [true, true, true, false],
    );
  });

  it('is not left to doubt for pages and for Typst, which stops at what it cannot place as LaTeX does', () => {
    const kinds = ['html', 'css', 'typst', 'latex', 'markdown', 'asciidoc'] as const;
    assert.deepEqual(
      kinds.filter(kind => toolOf(kind).alone),
      ['html', 'css', 'typst'],
    );
    assert.deepEqual(
      kinds.filter(kind => toolOf(kind).stops),
      ['typst', 'latex'],
    );
  });

  it('keeps the ink values of a JPEG where it goes into the print as it is', () =>
    assert.deepEqual((['html', 'markdown', 'typst', 'latex'] as const).map(jpegKeepsInks), [
      false,
      false,
      true,
      true,
    ]));
});

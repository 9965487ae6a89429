import assert from 'node:assert/strict';
import { kindOf } from '../../src/layout';

describe('the language of a layout', () => {
  it('is told by the extension', () => {
    const of = (...names: string[]) => names.map(kindOf);
    assert.deepEqual(of('a/book.md', 'B.HTML', 'c.css', 'd.tex', 'e.typ', 'f.adoc'), [
      ...['markdown', 'html', 'css', 'latex', 'typst', 'asciidoc'],
    ]);
    assert.deepEqual(of('a.jpg', 'md', '.md', 'a.md/b', 'a.constructor', 'x.txt'), new Array(6).fill(null));
  });

  it('is none for a file that tells of the folder', () => {
    assert.deepEqual(
      ['README.md', 'a/readme.adoc', 'CHANGELOG.md', 'LICENSE.html'].map(kindOf),
      new Array(4).fill(null),
    );
    assert.equal(kindOf('readmes.md'), 'markdown');
  });
});

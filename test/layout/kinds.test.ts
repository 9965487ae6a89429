import assert from 'node:assert/strict';
import { isAbout, kindOf } from '../../src/layout';

describe('the language of a layout', () => {
  it('is told by the extension', () => {
    const of = (...names: string[]) => names.map(kindOf);
    assert.deepEqual(of('a/book.md', 'B.HTML', 'c.css', 'd.tex', 'e.typ', 'f.adoc'), [
      ...['markdown', 'html', 'css', 'latex', 'typst', 'asciidoc'],
    ]);
    assert.deepEqual(of('a.jpg', 'md', '.md', 'a.md/b', 'a.constructor', 'x.txt'), new Array(6).fill(null));
  });

  it('says nothing of files that tell of the folder', () => {
    for (const name of ['README.md', 'a/readme.adoc', 'CHANGELOG.md', 'LICENSE.html'])
      assert.ok(isAbout(name), name);
    for (const name of ['readmes.md', 'book.md', 'readme/book.md']) assert.ok(!isAbout(name), name);
  });
});

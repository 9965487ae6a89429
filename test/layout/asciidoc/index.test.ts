import assert from 'node:assert/strict';
import { parseLayout, references } from '../../../src/layout';
import { paths, sizes, written } from '../support/placed';

describe('pictures in AsciiDoc', () => {
  it('are block and inline macros', () => {
    const text = `image::a b.jpg[Alt]
.Title
image::c.png[]
Text image:d.png[icon] and image:e.png[x, 10], (image:f.png[])
* item image:g.png[]
|cell image:h.png[]`;
    assert.deepEqual(paths(text, 'asciidoc'), [
      ...['a b.jpg', 'c.png', 'd.png', 'e.png', 'f.png', 'g.png', 'h.png'],
    ]);
  });

  it('are none in comments, listings, literals and escapes', () => {
    const text = `// image::no.jpg[]
////
image::no.jpg[]
////
----
image::no.jpg[]
....
----

....
image::no.jpg[]
....

 image:no.jpg[] in a literal paragraph

\\image:no.jpg[] text image::no.jpg[] myimage:no.jpg[]
image::yes.jpg[]`;
    assert.deepEqual(paths(text, 'asciidoc'), ['yes.jpg']);
  });

  it('count from the folder of images, and take attributes', () => {
    const text = `:plates: plates/2026
:imagesdir: {plates}
:front-cover: cover.jpg
image::a.jpg[]
:imagesdir:
image::{plates}/b.jpg[]
image::c{startsb}1{endsb}.jpg[]`;
    assert.deepEqual(
      references(text, 'asciidoc').map(({ path, folders }) => [path, ...folders]),
      [['cover.jpg', 'plates/2026'], ['a.jpg', 'plates/2026'], ['plates/2026/b.jpg'], ['c[1].jpg']],
    );
    assert.equal(written(text, 'asciidoc')[2], '{plates}/b.jpg');
  });

  it('have the size for paper, else that for a screen', () => {
    const text = `image::a.jpg[Alt, 300, 200]
image::b.jpg["Alt, with comma", width=50%]
image::c.jpg[Alt, 300, pdfwidth=80mm]
image::d.jpg[scaledwidth=75%]
image::e.jpg[pdfwidth=50vw,width=300]
image::f.jpg[]`;
    assert.deepEqual(sizes(text, 'asciidoc', { textWidth: 160 }), [
      'a.jpg: 79.4 x 52.9',
      'b.jpg: 80 x -',
      'c.jpg: 80 x -',
      'd.jpg: 120 x -',
      'e.jpg: unknown',
      'f.jpg: unknown',
    ]);
  });

  it('stand in texts that are included', () => {
    const { includes, passesOn } = parseLayout(':imagesdir: img\ninclude::one.adoc[]\n', 'asciidoc');
    assert.deepEqual(includes, [{ path: 'one.adoc', start: 16 }]);
    assert.deepEqual(references('image::a.jpg[]', 'asciidoc', { inherited: passesOn })[0].folders, ['img']);
  });
});

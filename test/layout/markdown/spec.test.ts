import assert from 'node:assert/strict';
import fs from 'node:fs';
import { references } from '../../../src/layout';

/** CommonMark 0.31.2 (spec.commonmark.org, CC BY-SA 4.0): every example with its HTML, from the package commonmark-spec. */
const specification = fs.readFileSync('node_modules/commonmark-spec/spec.txt', 'utf8');
const EXAMPLE = /^`{32} example\n([\s\S]*?)^\.\n([\s\S]*?)^`{32}$/gm;

describe('the specification of CommonMark', () => {
  it('shows pictures in its examples where they are found here, and nowhere else', () => {
    let withPictures = 0;
    let examples = 0;
    for (const [, markdown, html] of specification.replaceAll('→', '\t').matchAll(EXAMPLE)) {
      const expected = [
        ...html.replace(/<pre>[\s\S]*?<\/pre>/g, '').matchAll(/<img [^>]*?src="([^"]+)"/g),
      ].map(([, source]) => decodeURIComponent(source));
      assert.deepEqual(
        references(markdown, 'markdown').map(({ path }) => path),
        expected,
        markdown,
      );
      examples++;
      withPictures += expected.length ? 1 : 0;
    }
    assert.equal(examples, 652);
    assert.ok(withPictures >= 20, `${withPictures} examples with pictures`);
  });
});

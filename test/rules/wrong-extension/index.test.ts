import assert from 'node:assert/strict';
import type { Format } from '../../../src/shared/picture';
import { judged } from '../support/judged';
import { picture } from '../support/pictures';

const called = (path: string, format: Format, page = 1) =>
  picture('rgb-neutral', { path, facts: { format, page } });

describe('wrong-extension', () => {
  describe('passes', () => {
    const right: [string, Format][] = [
      ['a.jpg', 'jpeg'],
      ['a.JPEG', 'jpeg'],
      ['deep.er/a.tif', 'tiff'],
      ['a.TIFF', 'tiff'],
      ['deep.png/without', 'tiff'],
      ['.hidden', 'png'],
      ['a.xyz', 'unknown'],
    ];
    for (const [path, format] of right)
      it(`${path} that is ${format}`, () =>
        assert.deepEqual(judged([called(path, format)], 'wrong-extension').named, []));
  });
  describe('fails', () => {
    it('a TIFF called .jpg, and says what to call it', () => {
      const [[finding]] = judged([called('a.b.jpg', 'tiff')], 'wrong-extension').pictures;
      assert.equal(finding.severity, 'note');
      assert.match(finding.message, /called \.jpg, and its content is TIFF\. Rename it to \.tif\.$/);
    });
    it('a file of many pages once', () =>
      assert.equal(
        judged([called('a.jpg', 'tiff'), called('a.jpg', 'tiff', 2)], 'wrong-extension').named.length,
        1,
      ));
  });
});

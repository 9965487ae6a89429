import assert from 'node:assert/strict';
import { fromWebp } from '../../../../src/remedy/metadata/source/webp';
import { greyPage, riffChunk, tiffBytes, webpBytes } from '../../../picture/bytes';

describe('fromWebp', () => {
  it('reads EXIF, with and without JPEG’s head, and XMP', () => {
    const exif = tiffBytes([greyPage([[315, 2, [65, 0]]])]);
    for (const block of [exif, Buffer.concat([Buffer.from('Exif\0\0'), exif])]) {
      const found = fromWebp(webpBytes(riffChunk('EXIF', block), riffChunk('XMP ', Buffer.from('<a/>'))));
      assert.equal(found.exif?.tree.main[0].id, 315);
      assert.equal(found.xmp?.toString(), '<a/>');
    }
  });

  it('takes what there is of a chunk that is cut', () => {
    const file = webpBytes(riffChunk('XMP ', Buffer.from('<abcdef/>')));
    assert.equal(fromWebp(file.subarray(0, file.length - 6)).xmp?.toString(), '<abc');
  });
});

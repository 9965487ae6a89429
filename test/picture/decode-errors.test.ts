import assert from 'node:assert/strict';
import fs from 'node:fs';
import { decodeError } from '../../src/picture/decode-errors';
import { bufferSource, readHeader, UnreadableError } from '../../src/picture/header';

const header = readHeader(bufferSource(fs.readFileSync('test/picture/known/grey.jpg')));
const of = (message: string, more = {}) => decodeError(new Error(message), { ...header, ...more });

describe('decodeError', () => {
  // messages as the decoder (libvips 8.18, libjpeg, libtiff, libwebp) gave them
  const cases: [message: string, reason: string][] = [
    ['VipsJpeg: premature end of JPEG image', 'truncated'],
    ['vipspng: libpng read error', 'truncated'],
    ['VipsJpeg: Corrupt JPEG data: premature end of data segment', 'corrupt'],
    ['Input buffer contains unsupported image format', 'format'],
    ['heif: Unsupported feature: this compression format has not been built in', 'format'],
    ['Input image exceeds pixel limit', 'too-large'],
    ['webp: unable to parse image', 'corrupt'],
    [
      'VipsJpeg: Corrupt JPEG data: premature end of data segment\nVipsJpeg: Unsupported marker type 0xf6',
      'corrupt',
    ],
    ['tiff2vips: Using code not yet in table\ntiff2vips: read error', 'corrupt'],
  ];
  for (const [message, reason] of cases)
    it(`takes "${message}" as ${reason}`, () => {
      const error = of(message);
      assert.equal(error.reason, reason);
      assert.deepEqual([error.format, error.size], ['jpeg', { width: 32, height: 16 }]);
    });

  it('takes a failure in a file that ends early as cut, whatever the decoder calls it', () => {
    assert.equal(of('webp: unable to parse image', { incomplete: true }).reason, 'truncated');
  });

  it('takes data that end early in a file that is all there as damage', () => {
    assert.equal(of('vipspng: libpng read error', { incomplete: false }).reason, 'corrupt');
    assert.equal(of('vipspng: libpng read error', { incomplete: true }).reason, 'truncated');
    assert.equal(of('truncated', { incomplete: false, impossible: true }).reason, 'truncated');
  });

  it('quotes the decoder for damage only, without its own preface', () => {
    assert.match(
      of('Input buffer has corrupt header: bad thing\nmore').text,
      /export it again\. \(bad thing\)$/,
    );
    assert.match(of('Warning treated as error due to failOn setting\nthe cause\n').text, /\(the cause\)$/);
    assert.doesNotMatch(of('VipsJpeg: premature end of JPEG image').text, /Vips/);
    assert.doesNotMatch(of('Input buffer has corrupt header: ').text, /\(/);
  });

  it('lets through what is already explained', () => {
    const error = new UnreadableError('format', 'text');
    assert.equal(decodeError(error, header), error);
  });
});

import assert from 'node:assert/strict';
import { bufferSource } from '../../../src/picture/header/source';
import { readWebp } from '../../../src/picture/header/webp';
import { riffChunk, SHORT, tiffBytes, webpBytes } from '../bytes';

const read = (...chunks: Buffer[]) => readWebp(bufferSource(webpBytes(...chunks)));
const extended = (flags: number) => riffChunk('VP8X', Buffer.from([flags, 0, 0, 0, 99, 0, 0, 49, 0, 0]));

describe('readWebp', () => {
  it('reads the three ways in which a size is stored', () => {
    assert.deepEqual([read(extended(0)).width, read(extended(0)).height], [100, 50]);
    const lossy = read(riffChunk('VP8 ', Buffer.from([0, 0, 0, 0x9d, 1, 0x2a, 100, 0x40, 50, 0])));
    assert.deepEqual([lossy.width, lossy.height, lossy.alpha], [100, 50, false]);
    const bits = 99 | (49 << 14) | (1 << 28);
    const lossless = Buffer.from([0x2f, 0, 0, 0, 0]);
    lossless.writeUInt32LE(bits, 1);
    const header = read(riffChunk('VP8L', lossless));
    assert.deepEqual([header.width, header.height, header.alpha], [100, 50, true]);
  });

  it('reads alpha, profile and orientation of the extended form', () => {
    const exif = tiffBytes([[[274, SHORT, [6]]]]);
    const header = read(extended(0x10), riffChunk('ICCP', Buffer.from('abc')), riffChunk('EXIF', exif));
    assert.equal(header.alpha, true);
    assert.equal(Buffer.from(header.icc!).toString(), 'abc');
    assert.equal(header.orientation, 6);
    const prefixed = read(extended(0), riffChunk('EXIF', Buffer.concat([Buffer.from('Exif\0\0'), exif])));
    assert.equal(prefixed.orientation, 6);
  });

  it('knows that a file is cut', () => {
    const whole = webpBytes(extended(0), riffChunk('VP8 ', Buffer.alloc(40)));
    assert.equal(readWebp(bufferSource(whole)).incomplete, false);
    assert.equal(readWebp(bufferSource(whole.subarray(0, 60))).incomplete, true);
    assert.throws(() => read(riffChunk('XMP ', Buffer.alloc(4))), { reason: 'corrupt' });
  });
});

import assert from 'node:assert/strict';
import { readJpeg, segments } from '../../../src/picture/header/jpeg';
import { bufferSource } from '../../../src/picture/header/source';
import { frame, jpegBytes, RATIONAL, SHORT, segment, tiffBytes } from '../bytes';
import { RECORD, REMEDIED } from './remedied';

const read = (...parts: Buffer[]) => readJpeg(bufferSource(jpegBytes(...parts)));
const profile = (number: number, count: number, text: string) =>
  segment(0xe2, `ICC_PROFILE\0${String.fromCharCode(number, count)}${text}`);
const jfif = (unit: number, x: number, y: number) =>
  segment(0xe0, `JFIF\0\x01\x02${String.fromCharCode(unit, x >> 8, x & 255, y >> 8, y & 255)}\0\0`);
const exif = segment(
  0xe1,
  Buffer.concat([
    Buffer.from('Exif\0\0'),
    tiffBytes([
      [
        [274, SHORT, [3]],
        [282, RATIONAL, [240, 1]],
        [283, RATIONAL, [240, 1]],
      ],
    ]),
  ]),
);

describe('readJpeg', () => {
  it('reads size and channels of every kind of frame that can be decoded', () => {
    for (const marker of [0xc0, 0xc1, 0xc2, 0xc9])
      assert.deepEqual(
        [3, 1]
          .map(n => read(frame(n, { marker, width: 300, height: 200 })))
          .map(h => [h.width, h.height, h.space]),
        [
          [300, 200, 'rgb'],
          [300, 200, 'grey'],
        ],
      );
  });

  it('turns four inks round only where no marker says how they are stored', () => {
    const bare = read(frame(4));
    assert.equal(bare.inverted, true);
    assert.deepEqual(
      bare.remarks.map(r => r.code),
      ['no-ink-marker'],
    );
    const marked = read(segment(0xee, 'Adobe\0d\0\0\0\0\x02'), frame(4));
    assert.equal(marked.inverted, false);
    assert.deepEqual(marked.remarks, []);
  });

  it('joins the profile in the order of its numbers, not of the file', () => {
    const header = read(profile(2, 3, 'BB'), profile(3, 3, 'C'), profile(1, 3, 'AA'), frame(3));
    assert.equal(Buffer.from(header.icc!).toString(), 'AABBC');
  });

  it('does without a profile of which a part is missing, and says so', () => {
    const header = read(profile(1, 2, 'AA'), frame(3));
    assert.equal(header.icc, null);
    assert.deepEqual(
      header.remarks.map(r => r.code),
      ['bad-profile'],
    );
  });

  it('reads density from JFIF, else from EXIF, and orientation', () => {
    assert.deepEqual(read(jfif(1, 300, 150), exif, frame(1)).ppi, { x: 300, y: 150 });
    assert.deepEqual(read(jfif(2, 100, 100), frame(1)).ppi, { x: 254, y: 254 });
    const both = read(jfif(0, 1, 1), exif, frame(1));
    assert.deepEqual([both.ppi, both.orientation], [{ x: 240, y: 240 }, 3]);
    assert.equal(read(frame(1)).ppi, null);
  });

  it('reads what remedy made it, and passes over other packets', () => {
    const packet = (content: string) => segment(0xe1, `http://ns.adobe.com/xap/1.0/\0${content}`);
    assert.deepEqual(read(packet(RECORD), frame(3)).remedied, REMEDIED);
    assert.equal(read(packet('<a>'), frame(3)).remedied, null);
    assert.equal(read(segment(0xe1, RECORD), frame(3)).remedied, null);
  });

  it('steps over fill bytes, stray bytes and markers without length', () => {
    const odd = [Buffer.from([0xff, 0xff]), Buffer.from([0, 0, 7]), Buffer.from([0xff, 0x01])];
    assert.equal(read(odd[1], odd[2], Buffer.concat([odd[0].subarray(0, 1), frame(3)])).channels, 3);
  });

  it('takes the first frame, not that of an embedded preview', () => {
    const preview = segment(
      0xe1,
      Buffer.concat([Buffer.from('Exif\0\0'), jpegBytes(frame(3, { width: 1 }))]),
    );
    assert.equal(read(preview, frame(1, { width: 50 })).width, 50);
  });

  it('refuses what the decoder does not have, by name', () => {
    assert.throws(() => read(frame(3, { precision: 12 })), /12 bits/);
    assert.throws(() => read(frame(2)), /2 channels/);
    assert.throws(() => read(frame(3, { marker: 0xc3 })), /lossless/);
    assert.throws(() => read(jfif(1, 1, 1)), { reason: 'truncated' });
  });

  it('ends on lengths that lie', () => {
    const lying = Buffer.from([0xff, 0xe5, 0xff, 0xff]);
    assert.throws(() => read(lying), { reason: 'truncated' });
    assert.throws(() => read(Buffer.from([0xff, 0xe5, 0, 0])), { reason: 'truncated' });
  });
});

describe('segments', () => {
  it('ends with the first scan', () => {
    const found = [...segments(bufferSource(jpegBytes(exif, frame(1))))];
    assert.deepEqual(
      found.map(s => s.marker),
      [0xe1, 0xc0, 0xda],
    );
  });
});

import assert from 'node:assert/strict';
import sharp from 'sharp';
import { decode } from '../../src/picture/decode';
import { bufferSource, readHeader, UnreadableError } from '../../src/picture/header';
import { random } from './pass/random';

const SIZE = { width: 480, height: 320 };

/** A landscape of soft hills with grain, so that every part of it holds something; the same on every run. */
function picture(channels: 1 | 3) {
  const next = random(11);
  const data = Buffer.alloc(SIZE.width * SIZE.height * channels);
  for (let i = 0; i < SIZE.width * SIZE.height; i++) {
    const [x, y] = [i % SIZE.width, Math.floor(i / SIZE.width)];
    const v = 128 + 60 * Math.sin(x / 23 + Math.sin(y / 17)) + 40 * Math.cos(y / 31) + 20 * (next() - 0.5);
    data.fill(Math.round(v), i * channels, (i + 1) * channels);
  }
  return sharp(data, { raw: { ...SIZE, channels } }).toColourspace(channels === 1 ? 'b-w' : 'srgb');
}

const page = () =>
  sharp({ create: { width: 900, height: 700, channels: 3, background: '#fff' } }).composite([
    { input: { create: { width: 300, height: 200, channels: 3, background: '#222' } }, left: 40, top: 60 },
  ]);

const FILES: Record<string, () => Promise<Buffer>> = {
  'best codes': () => picture(3).jpeg({ quality: 85, optimiseCoding: true }).toBuffer(),
  'usual codes': () => picture(3).jpeg({ quality: 85, optimiseCoding: false }).toBuffer(),
  'full chroma': () => picture(3).jpeg({ quality: 92, chromaSubsampling: '4:4:4' }).toBuffer(),
  'one channel': () => picture(1).jpeg({ quality: 85, optimiseCoding: false }).toBuffer(),
  progressive: () => picture(1).jpeg({ quality: 85, progressive: true }).toBuffer(),
};
const OTHERS: Record<string, () => Promise<Buffer>> = {
  PNG: () => picture(3).png().toBuffer(),
  'PNG of 16 bits': () => picture(1).toColourspace('grey16').png().toBuffer(),
  'TIFF, LZW': () => picture(3).tiff({ compression: 'lzw' }).toBuffer(),
  'TIFF, deflated': () => picture(3).tiff({ compression: 'deflate' }).toBuffer(),
};

/** What decoding comes to: a reason, or null. */
async function fault(bytes: Buffer): Promise<string | null> {
  try {
    await decode(bytes, readHeader(bufferSource(bytes)));
    return null;
  } catch (error) {
    if (!(error instanceof UnreadableError)) throw error;
    assert.match(error.text, /(Copy or export it again|Export the picture again)\./);
    return error.reason;
  }
}

/** With `share` to `until` of the file filled with a byte. */
function filled(bytes: Buffer, share: number, until: number, byte = 0): Buffer {
  const copy = Buffer.from(bytes);
  return copy.fill(byte, Math.round(bytes.length * share), Math.round(bytes.length * until));
}

describe('files that lost a part', function () {
  this.timeout(60_000);

  for (const [name, make] of Object.entries(FILES)) {
    it(`JPEG, ${name}: whole`, async () => assert.equal(await fault(await make()), null));

    it(`JPEG, ${name}: cut, or zeros to its end, is truncated`, async () => {
      const bytes = await make();
      for (const share of [0.3, 0.5, 0.77, 0.95, 0.99]) {
        assert.equal(await fault(bytes.subarray(0, bytes.length * share)), 'truncated', `cut at ${share}`);
        assert.equal(await fault(filled(bytes, share, 1)), 'truncated', `zeros from ${share}`);
      }
      for (const less of [1, 2, 9])
        assert.equal(await fault(bytes.subarray(0, -less)), 'truncated', `${less}`);
    });

    it(`JPEG, ${name}: zeros or another byte in its midst is corrupt`, async () => {
      const bytes = await make();
      for (const [from, until] of [
        [0.3, 0.31],
        [0.4, 0.6],
        [0.5, 0.95],
        [0.7, 0.72],
        [0.9, 0.91],
      ])
        for (const byte of [0, 0x55])
          assert.equal(await fault(filled(bytes, from, until, byte)), 'corrupt', `${from}-${until}: ${byte}`);
    });
  }

  for (const [name, make] of Object.entries(OTHERS))
    it(`${name}: what is cut is truncated, what is written over corrupt`, async () => {
      const bytes = await make();
      assert.equal(await fault(bytes), null);
      for (const share of [0.3, 0.5, 0.8, 0.95])
        assert.equal(await fault(bytes.subarray(0, bytes.length * share)), 'truncated', `cut at ${share}`);
      for (const [from, until] of [
        [0.3, 0.32],
        [0.5, 0.9],
        [0.7, 0.72],
      ])
        assert.equal(await fault(filled(bytes, from, until)), 'corrupt', `${from}-${until}`);
      const zeros = await fault(filled(bytes, 0.5, 1));
      assert.ok(zeros === 'truncated' || zeros === 'corrupt', `${zeros}`);
    });

  it('are not those that only look so: blank pages, filling before the end, what is appended', async () => {
    for (const optimiseCoding of [true, false])
      for (const chromaSubsampling of ['4:2:0', '4:4:4']) {
        const bytes = await page().jpeg({ optimiseCoding, chromaSubsampling }).toBuffer();
        assert.equal(await fault(bytes), null, 'a page');
      }
    for (const name of ['best codes', 'usual codes', 'one channel']) {
      const bytes = await FILES[name]();
      const end = bytes.subarray(-2);
      const filling = Buffer.concat([bytes.subarray(0, -2), Buffer.alloc(500), end]);
      assert.equal(await fault(filling), null, `${name}: filling`);
      assert.equal(await fault(Buffer.concat([bytes, Buffer.alloc(500)])), null, `${name}: zeros behind`);
      assert.equal(await fault(Buffer.concat([bytes, bytes])), null, `${name}: a second picture behind`);
    }
  });
});

import assert from 'node:assert/strict';
import { deflateSync } from 'node:zlib';
import { readPng } from '../../../src/picture/header/png';
import { bufferSource } from '../../../src/picture/header/source';
import { chunk, pngBytes, SHORT, tiffBytes } from '../bytes';
import { RECORD, REMEDIED } from './remedied';

const read = (depth: number, colourType: number, ...chunks: Buffer[]) =>
  readPng(bufferSource(pngBytes(depth, colourType, ...chunks)));
const u32 = (...values: number[]) => {
  const b = Buffer.alloc(values.length * 4);
  values.forEach((v, i) => {
    b.writeUInt32BE(v, i * 4);
  });
  return b;
};

describe('readPng', () => {
  // PNG third edition, table 12: the colour types
  const types: [type: number, channels: number, alpha: boolean, palette: boolean][] = [
    [0, 1, false, false],
    [2, 3, false, false],
    [3, 3, false, true],
    [4, 1, true, false],
    [6, 3, true, false],
  ];
  for (const [type, channels, alpha, palette] of types)
    it(`reads colour type ${type}`, () => {
      const header = read(8, type);
      assert.deepEqual([header.channels, header.alpha, header.palette], [channels, alpha, palette]);
    });

  it('keeps stored bits of grey, and eight of a palette whatever its indices have', () => {
    assert.deepEqual(
      [1, 2, 4, 8, 16].map(d => read(d, 0).bits),
      [1, 2, 4, 8, 16],
    );
    assert.equal(read(2, 3).bits, 8);
  });

  it('has alpha where one colour is transparent', () => {
    assert.equal(read(8, 0, chunk('tRNS', Buffer.from([0, 3]))).alpha, true);
  });

  it('inflates the profile and refuses one that swells without end', () => {
    const iccp = (body: Buffer) => chunk('iCCP', Buffer.concat([Buffer.from('name\0\0'), body]));
    assert.equal(Buffer.from(read(8, 2, iccp(deflateSync('profile'))).icc!).toString(), 'profile');
    const bomb = read(8, 2, iccp(deflateSync(Buffer.alloc(40 << 20))));
    assert.equal(bomb.icc, null);
    assert.deepEqual(
      bomb.remarks.map(r => r.code),
      ['bad-profile'],
    );
    assert.equal(read(8, 2, iccp(Buffer.from('rubbish'))).icc, null);
  });

  it('says the stated gamma only where nothing better is said', () => {
    const gama = chunk('gAMA', u32(100000));
    assert.equal(read(8, 2, gama).gamma, 1);
    assert.equal(read(8, 2, chunk('sRGB', Buffer.from([0])), gama).gamma, null);
    assert.equal(read(8, 2).gamma, null);
  });

  it('reads resolution in metres, and none where the unit is open', () => {
    const phys = (unit: number) => chunk('pHYs', Buffer.concat([u32(11811, 5906), Buffer.from([unit])]));
    assert.deepEqual(read(8, 2, phys(1)).ppi, { x: 300, y: 150.01 });
    assert.equal(read(8, 2, phys(0)).ppi, null);
  });

  it('finds EXIF behind the pixels', () => {
    const header = read(
      8,
      2,
      chunk('IDAT', Buffer.alloc(9)),
      chunk('eXIf', tiffBytes([[[274, SHORT, [6]]]])),
    );
    assert.equal(header.orientation, 6);
  });

  it('reads what remedy made it, deflated or not', () => {
    const text = (keyword: string, deflated: boolean) =>
      chunk(
        'iTXt',
        Buffer.concat([
          Buffer.from(`${keyword}\0${deflated ? '\x01' : '\0'}\0\0\0`),
          deflated ? deflateSync(RECORD) : Buffer.from(RECORD),
        ]),
      );
    for (const deflated of [false, true])
      assert.deepEqual(read(8, 2, text('XML:com.adobe.xmp', deflated)).remedied, REMEDIED);
    assert.equal(read(8, 2, text('Comment', false)).remedied, null);
    assert.equal(read(8, 2, chunk('iTXt', Buffer.from('XML:com.adobe.xmp'))).remedied, null);
  });

  it('tells a whole file from one without an end', () => {
    const whole = pngBytes(8, 2, chunk('IDAT', Buffer.alloc(9)));
    assert.equal(readPng(bufferSource(whole)).incomplete, false);
    assert.equal(readPng(bufferSource(whole.subarray(0, whole.length - 14))).incomplete, true);
    assert.throws(() => readPng(bufferSource(whole.subarray(0, 20))), { reason: 'truncated' });
  });

  it('tells what is written over from what is cut', () => {
    const whole = pngBytes(8, 2, chunk('IDAT', Buffer.alloc(9)), chunk('IDAT', Buffer.alloc(90)));
    const second = whole.lastIndexOf('IDAT');
    const over = (text: string, to = whole.length) =>
      readPng(bufferSource(Buffer.from(whole).fill(text, second - 4, to))).incomplete;
    assert.equal(over('\0', second + 40), false);
    assert.equal(over('\0'), false);
    assert.equal(over('written', second + 40), false, 'letters, but the end is there');
    assert.equal(over('written'), true, 'as a chunk that is longer than the file');
  });

  it('refuses depths and types that do not exist', () => {
    assert.throws(() => read(3, 0), { reason: 'corrupt' });
    assert.throws(() => read(8, 5), { reason: 'corrupt' });
  });
});

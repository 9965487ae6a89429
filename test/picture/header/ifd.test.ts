import assert from 'node:assert/strict';
import { Ifds } from '../../../src/picture/header/ifd';
import { bufferSource } from '../../../src/picture/header/source';
import { LONG, LONG8, RATIONAL, SHORT, type Tag, tiffBytes, UNDEFINED } from '../bytes';

const tags: Tag[] = [
  [256, LONG, [123456]],
  [258, SHORT, [8, 8, 8]],
  [282, RATIONAL, [600, 2]],
  [338, SHORT, [2]],
  [34675, UNDEFINED, [1, 2, 3, 4, 5, 6, 7, 8, 9]],
];

function open(bytes: Buffer) {
  const ifds = new Ifds(bufferSource(bytes));
  return { ifds, directory: ifds.read(ifds.first) };
}

describe('Ifds', () => {
  for (const big of [false, true])
    for (const bigEndian of [false, true])
      it(`reads values inside and outside the directory: ${big ? 'BigTIFF' : 'TIFF'}, ${bigEndian ? 'MM' : 'II'}`, () => {
        const { ifds, directory } = open(tiffBytes([tags], { big, bigEndian }));
        assert.equal(ifds.value1(directory, 256, 0), 123456);
        assert.deepEqual(ifds.values(directory, 258), [8, 8, 8]);
        assert.equal(ifds.value1(directory, 282, 0), 300);
        assert.deepEqual([...ifds.bytes(directory, 34675)!], [1, 2, 3, 4, 5, 6, 7, 8, 9]);
        assert.equal(ifds.value1(directory, 999, 42), 42);
        assert.equal(directory.next, 0);
        assert.equal(directory.cut, false);
      });

  it('reads 64-bit values', () => {
    const { ifds, directory } = open(tiffBytes([[[273, LONG8, [2 ** 33]]]], { big: true }));
    assert.equal(ifds.value1(directory, 273, 0), 2 ** 33);
  });

  it('takes a file that ends with its last tag as ended', () => {
    const whole = tiffBytes([[[256, LONG, [8]]]]);
    assert.equal(open(whole.subarray(0, whole.length - 4)).directory.next, 0);
  });

  it('marks a directory whose values lie beyond the end', () => {
    const whole = tiffBytes([[[34675, UNDEFINED, [1, 2, 3, 4, 5, 6]]]]);
    assert.equal(open(whole.subarray(0, whole.length - 2)).directory.cut, true);
  });

  it('refuses a directory of thousands of tags and a value of millions', () => {
    const many = tiffBytes([[[256, LONG, [8]]]]);
    many.writeUInt16LE(60000, 8);
    assert.throws(() => open(many), /implausible number of tags/);
    const long = tiffBytes([[[258, SHORT, [8, 8, 8]]]]);
    long.writeUInt32LE(0x7fffffff, 14);
    const { ifds, directory } = open(long);
    assert.throws(() => ifds.values(directory, 258), /implausibly long/);
  });

  it('refuses what is no TIFF', () => {
    assert.throws(() => open(Buffer.from('IM*\0\0\0\0\0')), /byte-order/);
    assert.throws(() => open(Buffer.from('II,\0\0\0\0\0')), /version/);
  });
});

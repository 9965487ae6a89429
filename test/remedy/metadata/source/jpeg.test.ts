import assert from 'node:assert/strict';
import { fromJpeg } from '../../../../src/remedy/metadata/source/jpeg';
import { frame, jpegBytes, segment } from '../../../picture/bytes';

const jfif = (unit: number, x: number, y: number) =>
  segment(0xe0, `JFIF\0\x01\x02${String.fromCharCode(unit, x >> 8, x & 255, y >> 8, y & 255)}\0\0`);

describe('fromJpeg', () => {
  it('reads the density of JFIF in its own unit', () => {
    const density = (...of: [number, number, number]) => fromJpeg(jpegBytes(jfif(...of), frame(1))).density;
    assert.deepEqual(density(1, 300, 200), { x: [300, 1], y: [200, 1], unit: 'inch' });
    assert.deepEqual(density(2, 118, 118), { x: [118, 1], y: [118, 1], unit: 'cm' });
    assert.deepEqual(density(0, 1, 2), { x: [1, 1], y: [2, 1], unit: 'none' });
    assert.deepEqual([density(1, 0, 300), density(7, 1, 1)], [null, null]);
  });

  it('joins image resources that stand in several segments', () => {
    const part = (text: string) => segment(0xed, `Photoshop 3.0\0${text}`);
    const { resources } = fromJpeg(jpegBytes(part('8BIM'), part('rest'), segment(0xed, 'other'), frame(1)));
    assert.equal(resources?.toString(), '8BIMrest');
  });

  it('reads comments, the first packet and nothing behind the first scan', () => {
    const packet = (text: string) => segment(0xe1, `http://ns.adobe.com/xap/1.0/\0${text}`);
    const file = jpegBytes(
      segment(0xfe, 'one'),
      packet('<a/>'),
      segment(0xfe, 'two'),
      packet('<b/>'),
      frame(1),
    );
    const found = fromJpeg(Buffer.concat([file, segment(0xfe, 'three')]));
    assert.deepEqual(
      found.texts.map(({ text }) => text),
      ['one', 'two'],
    );
    assert.equal(found.xmp?.toString(), '<a/>');
  });

  it('puts an extension together by its offsets, whatever their order', () => {
    const guid = 'C'.repeat(32);
    const chunk = (at: number, text: string) =>
      segment(
        0xe1,
        `http://ns.adobe.com/xmp/extension/\0${guid}\0\0\0\x06\0\0\0${String.fromCharCode(at)}${text}`,
      );
    const packet = segment(0xe1, `http://ns.adobe.com/xap/1.0/\0<a HasExtendedXMP='${guid}'/>`);
    const found = fromJpeg(jpegBytes(chunk(3, 'def'), packet, chunk(0, 'abc'), frame(1)));
    assert.equal(found.xmpMore?.toString(), 'abcdef');
  });
});

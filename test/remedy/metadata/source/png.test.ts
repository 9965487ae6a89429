import assert from 'node:assert/strict';
import { fromPng } from '../../../../src/remedy/metadata/source/png';
import { rawProfileText } from '../../../../src/remedy/metadata/source/raw-profile';
import { chunk, greyPage, pngBytes, tiffBytes } from '../../../picture/bytes';

const from = (...chunks: Buffer[]) => fromPng(pngBytes(8, 2, ...chunks));
const raw = (kind: string, bytes: Buffer) =>
  chunk('tEXt', Buffer.from(`Raw profile type ${kind}\0${rawProfileText(kind, bytes)}`));

describe('fromPng', () => {
  it('reads density, with and without a unit', () => {
    const physical = (unit: number) =>
      from(chunk('pHYs', Buffer.from([0, 0, 0x2e, 0x23, 0, 0, 0x2e, 0x23, unit]))).density;
    assert.deepEqual(physical(1), { x: [300, 1], y: [300, 1], unit: 'inch' });
    assert.deepEqual(physical(0), { x: [11_811, 1], y: [11_811, 1], unit: 'none' });
    assert.equal(from(chunk('pHYs', Buffer.alloc(9))).density, null);
  });

  it('reads texts by their own sets of characters, and the packet', () => {
    const found = from(
      chunk('tEXt', Buffer.from('Title\0T\xf6r', 'latin1')),
      chunk('iTXt', Buffer.from('Author\0\0\0\0\0Nöbody')),
      chunk('iTXt', Buffer.from('XML:com.adobe.xmp\0\0\0\0\0<a/>')),
    );
    assert.deepEqual(found.texts, [
      { keyword: 'Title', text: 'Tör' },
      { keyword: 'Author', text: 'Nöbody' },
    ]);
    assert.equal(found.xmp?.toString(), '<a/>');
  });

  it('reads blocks that older writers keep in texts', () => {
    const exif = Buffer.concat([Buffer.from('Exif\0\0'), tiffBytes([greyPage([[315, 2, [65, 0]]])])]);
    const packet = Buffer.from('http://ns.adobe.com/xap/1.0/\0<a/>');
    assert.equal(from(raw('exif', exif)).exif?.tree.main.length, 1);
    assert.equal(from(raw('APP1', exif)).exif?.tree.main.length, 1);
    assert.equal(from(raw('APP1', packet)).xmp?.toString(), '<a/>');
    assert.equal(from(raw('xmp', Buffer.from('<b/>'))).xmp?.toString(), '<b/>');
    assert.equal(from(raw('iptc', Buffer.from('\x1cdata', 'latin1'))).iptc?.toString('latin1'), '\x1cdata');
    assert.equal(from(raw('8bim', Buffer.from('8BIMdata'))).resources?.toString(), '8BIMdata');
  });
});

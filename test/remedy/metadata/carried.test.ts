import assert from 'node:assert/strict';
import { bufferSource, readHeader } from '../../../src/picture/header';
import type { Header } from '../../../src/picture/types';
import { carriedFrom } from '../../../src/remedy/metadata';
import {
  chunk,
  frame,
  greyPage,
  jpegBytes,
  pngBytes,
  RATIONAL,
  SHORT,
  segment,
  tiffBytes,
  UNDEFINED,
} from '../../picture/bytes';

const from = (file: Buffer) => carriedFrom(file, readHeader(bufferSource(file)));
const ascii = (text: string) => [...Buffer.from(text, 'latin1')];
const exifOf = (x: number, unit: number) =>
  tiffBytes([
    [
      [282, RATIONAL, [x, 1]],
      [283, RATIONAL, [x, 1]],
      [296, SHORT, [unit]],
    ],
  ]);
const jfif = (unit: number, x: number, y: number) =>
  segment(0xe0, `JFIF\0\x01\x02${String.fromCharCode(unit, x >> 8, x & 255, y >> 8, y & 255)}\0\0`);
const app1 = (block: Buffer) => segment(0xe1, Buffer.concat([Buffer.from('Exif\0\0'), block]));

describe('carriedFrom', () => {
  it('means the density that the program everywhere means', () => {
    const inch = (n: number) => ({ x: [n, 1], y: [n, 1], unit: 'inch' });
    const density = (...parts: Buffer[]) => from(jpegBytes(...parts, frame(1))).density;
    assert.deepEqual(density(jfif(1, 300, 300), app1(exifOf(72, 2))), inch(300));
    assert.deepEqual(density(jfif(0, 1, 1), app1(exifOf(72, 2))), inch(72));
    assert.deepEqual(density(jfif(0, 1, 2)), { x: [1, 1], y: [2, 1], unit: 'none' });
    assert.equal(density(jfif(0, 1, 1)), null);
    assert.equal(density(app1(exifOf(300, 1))), null);
    assert.deepEqual(density(app1(exifOf(118, 3))), { x: [118, 1], y: [118, 1], unit: 'cm' });
    assert.equal(density(app1(exifOf(300, 9))), null);
    // the unit is the inch where none is named (TIFF 6.0, section 8)
    assert.deepEqual(from(tiffBytes([greyPage([[282, RATIONAL, [240, 1]]])])).density, inch(240));
  });

  it('takes IPTC by itself or among resources, in the byte order of its writer', () => {
    const iim = '\x1c\x02\x05\0\x01a\0\0';
    const swapped = Buffer.from(iim, 'latin1').swap32();
    const resources = `8BIM\x04\x04\0\0\0\0\0\x08${iim}`;
    for (const tag of [
      [33723, UNDEFINED, ascii(iim)],
      [33723, 4, [0x0502021c, 0x00006101].map(n => n >>> 0)],
      [33723, UNDEFINED, [...swapped]],
      [34377, 1, ascii(resources)],
    ] as [number, number, number[]][]) {
      const { iptc, told } = from(tiffBytes([greyPage([tag])]));
      assert.deepEqual([iptc?.[0], told], [0x1c, []], String(tag));
    }
    const bad = from(tiffBytes([greyPage([[33723, UNDEFINED, ascii('no data')]])]));
    assert.equal(bad.iptc, null);
    assert.match(bad.told.join(), /IPTC data of the file are damaged/);
  });

  it('tells of previews, which would show the old colours, and leaves them out', () => {
    const preview = /small preview inside the file was left out/;
    const thumbnail = tiffBytes([[[315, 2, [65, 0]]], [[513, 4, [0]]]]);
    assert.match(from(jpegBytes(app1(thumbnail), frame(3))).told.join(), preview);
    const resource = segment(0xed, 'Photoshop 3.0\x008BIM\x04\x0c\0\0\0\0\0\x02xx');
    const { told, resources } = from(jpegBytes(resource, frame(3)));
    assert.match(told.join(), preview);
    assert.deepEqual(resources, []);
  });

  it('carries no EXIF where nothing of it is left, and nothing of formats that hold none', () => {
    const { exif } = from(tiffBytes([greyPage()]));
    assert.equal(exif, null);
    const gif = carriedFrom(Buffer.from('GIF89a'), { format: 'gif', orientation: 1 } as Header);
    assert.deepEqual([gif.exif, gif.xmp, gif.told], [null, null, []]);
  });

  it('keeps the orientation of the header', () => {
    const png = pngBytes(8, 2, chunk('eXIf', tiffBytes([[[274, SHORT, [8]]]])));
    assert.equal(from(png).orientation, 8);
  });

  it('never throws', () => {
    const broken = carriedFrom(Buffer.from('II*\0'), { format: 'tiff', page: 1, orientation: 1 } as Header);
    assert.deepEqual(broken.told, ['The metadata of the file are damaged and were left out.']);
  });
});

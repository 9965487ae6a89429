import assert from 'node:assert/strict';
import { fromAvif } from '../../../../src/remedy/metadata/source/avif';
import { box, greyPage, tiffBytes } from '../../../picture/bytes';

const u16 = (...values: number[]) => Buffer.from(values.flatMap(v => [v >> 8, v & 255]));
const u32 = (...values: number[]) => Buffer.concat(values.map(v => u16(v >>> 16, v & 0xffff)));
const full = (version: number) => Buffer.from([version, 0, 0, 0]);
const item = (id: number, type: string, content = '') =>
  box('infe', full(2), u16(id, 0), Buffer.from(`${type}\0${content}\0`));

const exif = Buffer.concat([u32(0), tiffBytes([greyPage([[315, 2, [65, 0]]])])]);
const xmp = Buffer.from('<a/>');

/** EXIF at a place in the file, XMP in two pieces within the metadata box. */
function avif(exifLength = exif.length): Buffer {
  const ftyp = box('ftyp', Buffer.from('avif\0\0\0\0'));
  const idat = box('idat', xmp);
  const meta = (exifAt: number) =>
    box(
      'meta',
      full(0),
      box('iinf', full(0), u16(2), item(1, 'Exif'), item(2, 'mime', 'application/rdf+xml')),
      box(
        'iloc',
        full(1),
        u16(0x4400, 2),
        Buffer.concat([u16(1, 0, 0, 1), u32(exifAt, exifLength)]),
        Buffer.concat([u16(2, 1, 0, 2), u32(0, 2), u32(2, 2)]),
      ),
      idat,
    );
  const at = ftyp.length + meta(0).length + 8;
  return Buffer.concat([ftyp, meta(at), box('mdat', exif)]);
}

describe('fromAvif', () => {
  it('finds items by their place in the file or in the metadata box, in pieces too', () => {
    const found = fromAvif(avif());
    assert.equal(found.exif?.tree.main[0].id, 315);
    assert.equal(found.xmp?.toString(), '<a/>');
    assert.deepEqual(found.told, []);
  });

  it('tells of items that lie outside the file', () => {
    const found = fromAvif(avif(0x7fffffff));
    assert.equal(found.exif, null);
    assert.deepEqual(found.told, ['The EXIF data of the AVIF is damaged and was left out.']);
    assert.equal(found.xmp?.toString(), '<a/>');
  });

  it('finds nothing where there is no metadata box', () => {
    assert.deepEqual(fromAvif(box('ftyp', Buffer.from('avif'))).told, []);
  });
});

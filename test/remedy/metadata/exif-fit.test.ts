import assert from 'node:assert/strict';
import { exifPutRight } from '../../../src/remedy/metadata/exif-fit';
import { numbersOf } from '../../../src/remedy/metadata/exif-read';
import { type Field, FieldMaker } from '../../../src/remedy/metadata/fields';
import { emptyTree } from '../../../src/remedy/metadata/tree';
import { stored } from '../file/stored';

const make = new FieldMaker(false);
const TREE = {
  ...emptyTree(),
  main: [make.ascii(271, 'Box'), make.short(274, 6), make.short(531, 2), make.rational(282, [72, 1])],
  exif: [
    make.short(0xa001, 2),
    make.long(0xa002, 1),
    make.bytes(0x9101, Buffer.from([1, 2, 3, 0])),
    make.rational(0x9102, [4, 1]),
    make.rational(0xa500, [22, 10]),
    make.short(0x8827, 400),
  ],
  interop: [make.ascii(1, 'R03')],
};
const says = (fields: readonly Field[], id: number) => {
  const field = fields.find(f => f.id === id);
  return field ? numbersOf(field, false)[0] : undefined;
};
const density = { x: [300, 1], y: [300, 1], unit: 'inch' } as const;

describe('exifPutRight', () => {
  it('says what is true of a JPEG in R, G, B', () => {
    const { main, exif, interop } = exifPutRight(TREE, stored('rgb'), 'jpeg', 6, density);
    assert.deepEqual(
      [274, 296, 531].map(id => says(main, id)),
      [6, 2, 1],
    );
    assert.equal(main.find(({ id }) => id === 282)?.data.readUInt32LE(), 300);
    assert.deepEqual(
      [0xa001, 0xa002, 0xa003, 0x8827].map(id => says(exif, id)),
      [1, 67, 45, 400],
    );
    assert.deepEqual(exif.map(({ id }) => id).includes(0x9101), true);
    assert.equal(interop[0].data.toString(), 'R98\0');
  });

  it('leaves out what is of YCbCr, of sRGB or of other sizes where that is not written', () => {
    for (const [picture, format] of [
      [stored('grey'), 'jpeg'],
      [stored('cmyk'), 'tiff'],
    ] as const) {
      const { main, exif, interop } = exifPutRight(TREE, picture, format, 6, null);
      assert.deepEqual(
        [282, 531].map(id => says(main, id)),
        [undefined, undefined],
      );
      assert.equal(says(exif, 0xa001), 65_535);
      assert.equal(says(exif, 0xa002), format === 'jpeg' ? 67 : undefined);
      for (const id of [0x9101, 0x9102, 0xa500])
        assert.equal(
          exif.some(field => field.id === id),
          false,
        );
      assert.deepEqual(interop, []);
    }
  });

  it('adds an orientation only where one was or is needed', () => {
    const bare = { ...TREE, main: [] };
    assert.deepEqual(exifPutRight(bare, stored('grey'), 'png', 1, null).main, []);
    assert.equal(says(exifPutRight(bare, stored('grey'), 'png', 8, null).main, 274), 8);
    assert.equal(says(exifPutRight(TREE, stored('grey'), 'png', 1, null).main, 274), 1);
  });

  it('makes no EXIF directory where there was none', () => {
    const fit = exifPutRight({ ...TREE, exif: [] }, stored('rgb'), 'jpeg', 1, null);
    assert.deepEqual([fit.exif, fit.main.some(({ id }) => id === 531)], [[], false]);
  });
});

import assert from 'node:assert/strict';
import { parseExif } from '../../../src/picture/header/exif';
import { RATIONAL, SHORT, tiffBytes } from '../bytes';

describe('parseExif', () => {
  it('reads orientation and resolution per inch', () => {
    const block = tiffBytes([
      [
        [274, SHORT, [6]],
        [282, RATIONAL, [300, 1]],
        [283, RATIONAL, [2400, 10]],
        [296, SHORT, [2]],
      ],
    ]);
    assert.deepEqual(parseExif(block), { orientation: 6, ppi: { x: 300, y: 240 } });
  });

  it('turns centimetres into inches, and takes the inch where no unit is named', () => {
    const of = (unit: number | null) =>
      parseExif(
        tiffBytes([
          [
            [282, RATIONAL, [100, 1]],
            [283, RATIONAL, [100, 1]],
            ...(unit ? [[296, SHORT, [unit]]] : []),
          ] as never,
        ]),
      ).ppi;
    assert.deepEqual(of(3), { x: 254, y: 254 });
    assert.deepEqual(of(null), { x: 100, y: 100 });
    assert.equal(of(1), null, 'unit 1 is a shape of pixels, not a size');
  });

  it('says nothing where the block is broken or out of range', () => {
    const nothing = { orientation: 1, ppi: null };
    assert.deepEqual(parseExif(Buffer.from('nonsense')), nothing);
    assert.deepEqual(parseExif(tiffBytes([[[274, SHORT, [9]]]])), nothing);
    assert.deepEqual(parseExif(tiffBytes([[[282, RATIONAL, [300, 0]]]])), nothing);
  });
});

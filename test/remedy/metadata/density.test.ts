import assert from 'node:assert/strict';
import {
  densityFields,
  fromMetre,
  jfifDensity,
  perMetre,
  turned,
} from '../../../src/remedy/metadata/density';
import { FieldMaker } from '../../../src/remedy/metadata/fields';

describe('density', () => {
  it('of a PNG is whole inches where it was made of them, else exact centimetres', () => {
    for (const ppi of [72, 150, 240, 300, 360, 1200]) {
      const metre = Math.round(ppi / 0.0254);
      assert.deepEqual(fromMetre(metre, metre), { x: [ppi, 1], y: [ppi, 1], unit: 'inch' });
      assert.equal(perMetre(fromMetre(metre, metre))?.x, metre);
    }
    assert.deepEqual(fromMetre(10_050, 10_050), { x: [10_050, 100], y: [10_050, 100], unit: 'cm' });
    assert.deepEqual(perMetre(fromMetre(10_050, 10_050)), { x: 10_050, y: 10_050, unit: 1 });
  });

  it('without a unit stays without', () => {
    const shape = { x: [2, 1], y: [1, 1], unit: 'none' } as const;
    assert.deepEqual(perMetre(shape), { x: 2, y: 1, unit: 0 });
    assert.deepEqual(jfifDensity(shape), { x: 2, y: 1, unit: 0 });
  });

  it('is whole in JFIF, and absent where 16 bits do not hold it', () => {
    assert.deepEqual(jfifDensity({ x: [2995, 10], y: [118, 1], unit: 'cm' }), { x: 300, y: 118, unit: 2 });
    assert.equal(jfifDensity({ x: [70_000, 1], y: [300, 1], unit: 'inch' }), null);
    assert.equal(jfifDensity({ x: [1, 10], y: [1, 10], unit: 'inch' }), null);
    assert.equal(perMetre({ x: [0xffffffff, 1], y: [1, 1], unit: 'cm' }), null);
  });

  it('is exact in TIFF and EXIF', () => {
    const fields = densityFields({ x: [2995, 10], y: [300, 1], unit: 'cm' }, new FieldMaker(true));
    assert.deepEqual(
      fields.map(({ id, data }) => [id, data.toString('hex')]),
      [
        [282, '00000bb30000000a'],
        [283, '0000012c00000001'],
        [296, '0003'],
      ],
    );
  });

  it('changes its directions when the picture is turned', () => {
    assert.deepEqual(turned({ x: [1, 1], y: [2, 1], unit: 'inch' }), { x: [2, 1], y: [1, 1], unit: 'inch' });
  });
});

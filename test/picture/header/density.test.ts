import assert from 'node:assert/strict';
import { perInch } from '../../../src/picture/header/density';

describe('perInch', () => {
  it('brings every unit to the inch', () => {
    assert.deepEqual(perInch(300, 300, 'inch'), { x: 300, y: 300 });
    assert.deepEqual(perInch(100, 50, 'cm'), { x: 254, y: 127 });
    assert.deepEqual(
      perInch(11811, 11811, 'metre'),
      { x: 300, y: 300 },
      'PNG keeps 300 ppi as 11811 per metre',
    );
  });

  it('says nothing where there is nothing sensible', () => {
    for (const bad of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      assert.equal(perInch(bad, 300, 'inch'), null);
  });
});

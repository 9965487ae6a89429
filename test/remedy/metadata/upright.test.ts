import assert from 'node:assert/strict';
import { upright } from '../../../src/remedy/metadata';
import { bare } from '../file/stored';

const density = { x: [1, 1], y: [2, 1], unit: 'inch' } as const;

describe('upright', () => {
  it('resets the orientation, and turns the density where width and height change places', () => {
    for (const orientation of [1, 2, 3, 4])
      assert.deepEqual(upright(bare({ orientation, density })), bare({ density }));
    for (const orientation of [5, 6, 7, 8])
      assert.deepEqual(upright(bare({ orientation, density })).density, {
        x: [2, 1],
        y: [1, 1],
        unit: 'inch',
      });
    assert.deepEqual(upright(bare({ orientation: 6 })), bare());
  });
});

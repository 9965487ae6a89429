import assert from 'node:assert/strict';
import { greyMethods, methodNamed } from '../../../src/remedy/grey/methods';
import { greyPresets } from '../../../src/remedy/grey/presets';

describe('ways to grey by name', () => {
  it('begin with lightness and hold every mix, each name once', () => {
    const ids = greyMethods.map(({ id }) => id);
    assert.equal(ids[0], 'lightness');
    for (const { id } of greyPresets) assert.ok(ids.includes(id));
    assert.equal(new Set(ids).size, ids.length);
    assert.equal(greyMethods.find(({ id }) => id === 'darker-sky')?.name, 'Darker sky');
  });

  it('are found by id, and nothing else is', () => {
    assert.deepEqual(methodNamed('luma'), { kind: 'luma' });
    // L* is luminance on an even scale
    assert.deepEqual(methodNamed('luminance'), { kind: 'lightness' });
    assert.equal(methodNamed('desaturate'), undefined);
  });
});

import assert from 'node:assert/strict';
import type { Samples } from '../../../src/picture/types';
import { shrunk } from '../../../src/remedy/candidates/shrunk';

const grey = (width: number, height: number, data: Samples['data']): Samples => ({
  ...{ width, height, data },
  channels: 1,
  alpha: false,
  space: 'grey',
});

describe('samples made small', () => {
  it('are the mean of what falls into each pixel, rounded where numbers are whole', () => {
    const small = shrunk(grey(4, 2, Uint8Array.of(0, 10, 100, 200, 20, 31, 0, 0)), 2);
    assert.deepEqual([small.width, small.height, [...small.data]], [2, 1, [15, 75]]);
    const float = shrunk(grey(2, 1, Float32Array.of(0, 0.5)), 1);
    assert.deepEqual([...float.data], [0.25]);
  });

  it('keep channels apart, and every pixel counts once where sizes do not divide', () => {
    const rgb: Samples = {
      ...grey(3, 1, Uint8Array.of(9, 0, 0, 0, 9, 0, 0, 0, 9)),
      channels: 3,
      space: 'rgb',
    };
    const small = shrunk(rgb, 2);
    assert.deepEqual([small.width, [...small.data]], [2, [9, 0, 0, 0, 5, 5]]);
  });

  it('stay where they are small enough', () => {
    const picture = grey(4, 2, new Uint8Array(8));
    assert.equal(shrunk(picture, 4), picture);
  });
});

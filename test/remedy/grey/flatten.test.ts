import assert from 'node:assert/strict';
import type { Samples } from '../../../src/picture/types';
import { onPaper } from '../../../src/remedy/grey/flatten';

const make = (space: Samples['space'], channels: 1 | 3 | 4, data: Samples['data']): Samples => ({
  width: data.length / (channels + 1),
  height: 1,
  channels,
  alpha: true,
  space,
  data,
});

describe('laid on paper', () => {
  it('what is wholly transparent becomes paper, half of it lies in the middle of the stored numbers', () => {
    const { data, alpha } = onPaper(make('grey', 1, Uint8Array.of(10, 255, 10, 0, 55, 128)));
    assert.equal(alpha, false);
    // 55 x 128/255 + 255 x 127/255 = 154.6
    assert.deepEqual([...data], [10, 255, 155]);
  });
  it('paper carries no ink', () => {
    const { data } = onPaper(make('cmyk', 4, Uint16Array.of(9, 8, 7, 60000, 0, 100, 200, 300, 400, 65535)));
    assert.deepEqual([...data], [0, 0, 0, 0, 100, 200, 300, 400]);
  });
  it('in Lab paper is L* 100 without colour, and full opacity is 32767', () => {
    const { data } = onPaper(make('lab', 3, Int16Array.of(100, -50, 70, 0, 100, -50, 70, 32767)));
    assert.deepEqual([...data], [32767, 0, 0, 100, -50, 70]);
  });
  it('floats stay floats', () => {
    const { data } = onPaper(make('rgb', 3, Float32Array.of(0.2, 0.4, 0.6, 0.5)));
    [0.6, 0.7, 0.8].forEach((wanted, i) => {
      assert.ok(Math.abs(data[i] - wanted) < 1e-6);
    });
  });
  it('without alpha nothing is copied', () => {
    const plain = { ...make('grey', 1, Uint8Array.of(1, 2)), alpha: false };
    assert.equal(onPaper(plain), plain);
  });
});

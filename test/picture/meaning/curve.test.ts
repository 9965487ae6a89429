import assert from 'node:assert/strict';
import { GreyCurve } from '../../../src/picture/meaning/curve';

describe('a grey curve', () => {
  it('gives L* by value and no colour', () => {
    const lab = new Float32Array(9).fill(7);
    new GreyCurve(v => 100 * v * v).lab(Float32Array.of(0, 127.5, 255), 3, lab);
    assert.deepEqual([...lab], [0, 0, 0, 25, 0, 0, 100, 0, 0]);
  });
});

import assert from 'node:assert/strict';
import { eigenSymmetric } from '../../src/print/eigen';

describe('eigenvalues of a small symmetric matrix', () => {
  it('meet M v = lambda v with orthonormal vectors', () => {
    const n = 4;
    const m = [4, 1, -2, 0.5, 1, 2, 0, 1, -2, 0, 3, -2, 0.5, 1, -2, -1];
    const { values, vectors } = eigenSymmetric(m, n);
    for (let i = 0; i < n; i++)
      for (let row = 0; row < n; row++) {
        let product = 0;
        for (let j = 0; j < n; j++) product += m[row * n + j] * vectors[j * n + i];
        assert.ok(Math.abs(product - values[i] * vectors[row * n + i]) < 1e-10);
      }
    for (let i = 0; i < n; i++)
      for (let k = 0; k <= i; k++) {
        let dot = 0;
        for (let j = 0; j < n; j++) dot += vectors[j * n + i] * vectors[j * n + k];
        assert.ok(Math.abs(dot - (i === k ? 1 : 0)) < 1e-12);
      }
  });
  it('finds the one axis of values that move together', () => {
    const { values } = eigenSymmetric(Array(9).fill(0.04), 3);
    assert.deepEqual(values.map(v => Math.abs(Math.round(v * 1e6) / 1e6)).sort(), [0, 0, 0.12]);
  });
  it('takes a single value', () => assert.deepEqual(eigenSymmetric([0.3], 1).values, [0.3]));
});

import assert from 'node:assert/strict';
import { rangeCorrection } from '../../../src/print/inks/substrate';

describe('change of paper', () => {
  it('is the backing correction of the CGATS reports if the darkest colour stays', () => {
    // X2 = [X1 (Xw2 - Xk) + Xk (Xw1 - Xw2)] / (Xw1 - Xk), from memory, high confidence
    const [w1, w2, k, x1] = [84.47, 78.9, 0.9, 40];
    const { slope, intercept } = rangeCorrection(w1, w2, k, k);
    assert.ok(Math.abs(slope * x1 + intercept - (x1 * (w2 - k) + k * (w1 - w2)) / (w1 - k)) < 1e-12);
  });
  it('moves both ends where both are known', () => {
    const { slope, intercept } = rangeCorrection(85, 80, 1, 2);
    assert.ok(Math.abs(slope * 85 + intercept - 80) < 1e-12 && Math.abs(slope * 1 + intercept - 2) < 1e-12);
  });
});

import assert from 'node:assert/strict';
import { monotoneCurve } from '../../../src/colour/press/curve';

describe('monotone curve', () => {
  // Fritsch and Carlson 1980, RPN 14 data: the curve through it must not overshoot
  const x = [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20];
  const y = [0, 2.76429e-5, 4.37498e-2, 0.169183, 0.469428, 0.94374, 0.998636, 0.999919, 0.999994];
  const curve = monotoneCurve(x, y);

  it('goes through its points', () => {
    x.forEach((at, i) => {
      assert.ok(Math.abs(curve(at) - y[i]) < 1e-12);
    });
  });
  it('rises where its points rise, and never above the last', () => {
    for (let at = 8; at < 20; at += 0.01)
      assert.ok(curve(at + 0.01) >= curve(at) - 1e-12 && curve(at) <= y[8]);
  });
  it('is flat between equal points and holds its ends', () => {
    const flat = monotoneCurve([0, 1, 2, 3], [0, 1, 1, 2]);
    assert.equal(flat(1.5), 1);
    assert.equal(flat(-1), 0);
    assert.equal(flat(9), 2);
  });
  it('is a line through two points', () => assert.equal(monotoneCurve([0, 2], [1, 5])(0.5), 2));
});

import assert from 'node:assert/strict';
import { solve3 } from '../../../src/print/spectral/solve';

describe('three equations, three unknowns', () => {
  it('are solved from a rough start', () => {
    const f = (x: Float64Array, out: Float64Array) => {
      out[0] = Math.exp(-x[0]) + x[1];
      out[1] = x[1] * x[2];
      out[2] = x[0] + x[2] ** 3;
    };
    const target = new Float64Array(3);
    f(Float64Array.of(0.7, 1.3, 0.4), target);
    const x = solve3(f, target, [0.5, 1, 0.5], 1e-9);
    [0.7, 1.3, 0.4].forEach((value, i) => {
      assert.ok(Math.abs(x[i] - value) < 1e-6);
    });
  });

  it('say so where there is no answer', () => {
    const f = (x: Float64Array, out: Float64Array) => {
      out[0] = x[0] ** 2;
      out[1] = x[1];
      out[2] = x[2];
    };
    assert.throws(() => solve3(f, [-1, 0, 0], [1, 0, 0], 1e-9), /no three values/);
  });
});

import assert from 'node:assert/strict';
import { apply, diagonal, invert, matrix3, multiply, solve } from '../../src/colour/matrix';

const near = (is: ArrayLike<number>, should: number[], by = 1e-12) =>
  should.forEach((value, i) => {
    assert.ok(Math.abs(is[i] - value) <= by, `${Array.from(is)} is not ${should}`);
  });

describe('3 x 3 matrices', () => {
  const m = matrix3(2, 1, 0, 0, 3, 1, 1, 0, 4);

  it('apply to a vector in place', () => {
    const v = Float64Array.of(1, 2, 3);
    apply(m, v, v);
    near(v, [4, 9, 13]);
  });

  it('multiply in the order "second after first"', () => {
    const v = [1, -2, 5];
    const once = apply(diagonal(2, 3, 4), apply(m, v, new Float64Array(3)), new Float64Array(3));
    near(apply(multiply(diagonal(2, 3, 4), m), v, new Float64Array(3)), Array.from(once));
  });

  it('invert, and say when they cannot', () => {
    near(multiply(m, invert(m)), [1, 0, 0, 0, 1, 0, 0, 0, 1]);
    near(solve(m, [4, 9, 13]), [1, 2, 3]);
    assert.throws(() => invert(matrix3(1, 2, 3, 2, 4, 6, 0, 0, 1)), /no inverse/);
  });

  it('have nine numbers', () => {
    assert.throws(() => matrix3(1, 2, 3), /nine/);
  });
});

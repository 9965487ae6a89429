import { matrix3, solve } from '../../colour/matrix';

const STEP = 1e-4;
const ROUNDS = 20;

/**
 * Three unknowns whose `f` is `target`, to `epsilon` in each: Newton's method from `start` with a Jacobian by differences.
 * `f` writes three numbers into its second argument. Returns the unknowns; throws where it does not get there.
 */
export function solve3(
  f: (x: Float64Array, out: Float64Array) => void,
  target: ArrayLike<number>,
  start: ArrayLike<number>,
  epsilon: number,
): Float64Array {
  const x = Float64Array.from(start);
  const at = new Float64Array(3);
  const moved = new Float64Array(3);
  const jacobian = matrix3(0, 0, 0, 0, 0, 0, 0, 0, 0);
  for (let round = 0; round < ROUNDS; round++) {
    f(x, at);
    const miss = [target[0] - at[0], target[1] - at[1], target[2] - at[2]];
    if (miss.every(value => Math.abs(value) < epsilon)) return x;
    for (let j = 0; j < 3; j++) {
      const kept = x[j];
      x[j] = kept + STEP;
      f(x, moved);
      x[j] = kept;
      for (let i = 0; i < 3; i++) jacobian[i * 3 + j] = (moved[i] - at[i]) / STEP;
    }
    const step = solve(jacobian, miss);
    for (let j = 0; j < 3; j++) x[j] += step[j];
  }
  throw new Error(
    `no three values give ${Array.from(target)
      .map(value => value.toFixed(2))
      .join(', ')}`,
  );
}

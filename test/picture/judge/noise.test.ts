import assert from 'node:assert/strict';
import { Noise } from '../../../src/picture/judge/noise';
import { random } from '../pass/random';

function deviation(offset: (i: number) => number, n = 40000): number {
  const noise = new Noise();
  noise.add(
    Float32Array.from({ length: 2 * n }, (_, i) => offset(i)),
    n,
  );
  return noise.deviation();
}

describe('noise of the blocks', () => {
  it('is the standard deviation of grain', () => {
    const next = random(11);
    const normal = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
    for (const sd of [0.2, 0.7, 2]) {
      const found = deviation(() => sd * normal());
      assert.ok(Math.abs(found - sd) < 0.05 * sd + 0.03, `${found}, not ${sd}`);
    }
  });
  it('is not a cast that changes slowly, nor colour in places', () => {
    assert.ok(deviation(i => (20 * i) / 80000) < 0.05);
    assert.equal(
      deviation(i => (i % 4000 < 1000 ? 30 : 0)),
      0,
    );
  });
  it('of nothing is none', () =>
    assert.equal(
      deviation(() => 1, 0),
      0,
    ));
});

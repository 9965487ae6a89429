import assert from 'node:assert/strict';
import { cellRandom, fbm2, fbm3, noise2, noise3, random, ridges2 } from '../../src/demo/noise';

describe('demo: noise', () => {
  it('gives the same numbers for the same seed, evenly from 0 to 1', () => {
    const a = random(5);
    const b = random(5);
    let sum = 0;
    for (let i = 0; i < 10_000; i++) {
      const value = a();
      assert.equal(value, b());
      assert.ok(value >= 0 && value < 1);
      sum += value;
    }
    assert.ok(Math.abs(sum / 10_000 - 0.5) < 0.015, `mean ${sum / 10_000}`);
  });

  it('stays in range, is 0 at the grid points and has no steps', () => {
    for (let i = 0; i < 5000; i++) {
      const x = i * 0.137 - 300;
      const y = i * 0.071 + 11;
      for (const value of [noise2(x, y), noise3(x, y, x * 0.3), fbm2(x, y, 5), fbm3(x, y, 2.5, 4)])
        assert.ok(Math.abs(value) < 1.7, `${value} at ${x}, ${y}`);
      assert.ok(Math.abs(noise2(x + 1e-4, y) - noise2(x, y)) < 1e-3);
      assert.ok(ridges2(x, y, 4) >= 0 && ridges2(x, y, 4) < 1);
      assert.ok(cellRandom(i, -i, 3) >= 0 && cellRandom(i, -i, 3) < 1);
    }
    assert.equal(Math.abs(noise2(12, -7)), 0);
  });
});

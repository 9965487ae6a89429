import assert from 'node:assert/strict';
import { blur, expose, mix, smoothstep } from '../../src/demo/plate';

describe('demo: plate', () => {
  it('asks for every pixel, from the upper left, in units of half the height', () => {
    const { light } = expose(4, 2, (x, y) => 10 * x + y);
    assert.deepEqual([...light], [-15.5, -5.5, 4.5, 14.5, -14.5, -4.5, 5.5, 15.5]);
  });

  it('blurs without losing light, and reaches as far as it is told', () => {
    const plate = expose(101, 101, (x, y) => (Math.hypot(x, y) < 0.005 ? 1 : 0));
    const { light } = blur(plate, 6);
    assert.equal(plate.light[50 * 101 + 50], 1, 'the plate itself is kept');
    let sum = 0;
    let variance = 0;
    light.forEach((value, i) => {
      sum += value;
      variance += value * ((i % 101) - 50) ** 2;
    });
    assert.ok(Math.abs(sum - 1) < 1e-3, `sum ${sum}`);
    assert.ok(Math.abs(Math.sqrt(variance) - 6) < 0.7, `sigma ${Math.sqrt(variance)}`);
  });

  it('steps smoothly both ways and mixes', () => {
    assert.deepEqual(
      [-1, 0, 0.5, 1, 2].map(value => smoothstep(0, 1, value)),
      [0, 0, 0.5, 1, 1],
    );
    assert.equal(smoothstep(1, 0, 0.25), 1 - smoothstep(0, 1, 0.25));
    assert.equal(mix(2, 6, 0.25), 3);
  });
});

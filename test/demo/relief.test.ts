import assert from 'node:assert/strict';
import { expose } from '../../src/demo/plate';
import { light } from '../../src/demo/relief';

const lamp = { towards: [-1, 0, 1] as [number, number, number], softness: 0.1, reach: 1 };

describe('demo: relief', () => {
  it('lights a plain by the cosine, a slope towards the lamp more', () => {
    const plain = light(
      expose(40, 40, () => 0.3),
      lamp,
      0.1,
    );
    assert.ok(Math.abs(plain.direct[20 * 40 + 20] - Math.SQRT1_2) < 1e-3);
    assert.ok(Math.abs(plain.open[20 * 40 + 20] - 0.5) < 1e-3);
    const slope = light(
      expose(40, 40, x => x),
      lamp,
      0.1,
    );
    assert.ok(slope.direct[20 * 40 + 20] > 0.99);
  });

  it('lets a wall throw a shadow away from the lamp', () => {
    const wall = expose(100, 100, x => (Math.abs(x) < 0.1 ? 0.5 : 0));
    const { direct } = light(wall, lamp, 0.1);
    assert.equal(direct[50 * 100 + 60], 0, 'right of the wall');
    assert.ok(direct[50 * 100 + 20] > 0.5, 'left of it');
  });
});

import assert from 'node:assert/strict';
import { ball, carve, ellipsoid, join, rod } from '../../src/demo/solids';

const near = (value: number, wanted: number) => assert.ok(Math.abs(value - wanted) < 1e-9, `${value}`);

describe('demo: solids', () => {
  it('gives distances to balls, rods and the surface of ellipsoids', () => {
    near(ball(3, 4, 0, 2), 3);
    near(rod(0, 5, 0, [-1, 0, 0], [1, 0, 0], 1, 1), 4);
    near(rod(4, 0, 0, [-1, 0, 0], [1, 0, 0], 1, 0.5), 2.5);
    near(ellipsoid(0, 2, 0, 1, 2, 3), 0);
    assert.ok(ellipsoid(0, 0, 0, 1, 2, 3) < 0);
  });

  it('joins and carves softly where surfaces are near, sharply where they are not', () => {
    assert.equal(join(0.2, 5, 0.1), 0.2);
    assert.ok(join(0.2, 0.2, 0.1) < 0.2);
    assert.equal(carve(-1, 3, 0.1), -1);
    assert.ok(carve(-0.01, -0.5, 0.1) >= 0.5);
  });
});

import assert from 'node:assert/strict';
import { lampSeen, openTo, trace } from '../../src/demo/march';
import { ball } from '../../src/demo/solids';

const CAMERA = { distance: 5, field: 0.3, aimX: 0, aimY: 0 };

describe('demo: march', () => {
  it('finds a ball where it is, and nothing beside it', () => {
    const { depth } = trace((x, y, z) => ball(x, y, z, 1), CAMERA, 60, 60, 2, 9);
    const middle = depth[30 * 60 + 30];
    assert.ok(Math.abs(middle - 4) < 0.02, `${middle}`);
    assert.equal(depth[0], Infinity);
    // its outline: the tangent cone's half angle is asin(1/5), the picture's is atan(0.3)
    const seen = depth.filter(t => t < Infinity).length / depth.length;
    const share = (Math.PI / 4) * (Math.tan(Math.asin(1 / 5)) / 0.3) ** 2;
    assert.ok(Math.abs(seen - share) < 0.03, `${seen} for ${share}`);
  });

  it('casts a shadow, and knows a hollow from open ground', () => {
    const up = { x: 0, y: 1, z: 0 };
    const ground = (_x: number, y: number) => y;
    const covered = (x: number, y: number, z: number) => Math.min(y, ball(x, y - 1, z, 0.5));
    assert.equal(lampSeen(covered, 0, 0.01, 0, up, 0.2, 3), 0);
    assert.equal(lampSeen(covered, 2, 0.01, 0, up, 0.2, 3), 1);
    assert.ok(openTo(ground, 0, 0, 0, up) > 0.99);
    assert.ok(openTo((x, y) => Math.min(y, x), 0, 0, 0, up) < 0.6);
  });
});

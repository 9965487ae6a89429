import assert from 'node:assert/strict';
import { labF, quickLabF } from '../../../src/picture/meaning/cie';

describe('the cube root of CIELAB', () => {
  // CIE 015:2018, 8.2.1: f is continuous where its two parts meet, and L* = 116 f - 16
  it('meets its straight part at (24/116)^3', () => {
    const meet = (24 / 116) ** 3;
    assert.ok(Math.abs(labF(meet) - labF(meet + 1e-12)) < 1e-9);
    assert.ok(Math.abs(116 * labF(1) - 100 - 16) < 1e-12);
  });
  it('comes from the table within 0.003 of a*', () => {
    for (let t = 0; t < 1.4; t += 0.000137)
      assert.ok(500 * Math.abs(quickLabF(t) - labF(t)) < 0.006, `at ${t}`);
  });
  it('is clamped outside', () => assert.equal(quickLabF(-1), quickLabF(0)));
});

import assert from 'node:assert/strict';
import { defaultTarget } from '../../../src/print';
import { underLight } from '../../../src/print/inks/under-light';
import type { LightShift } from '../../../src/print/model';
import { pressOf } from '../../../src/print/press';

const { daylight } = pressOf(defaultTarget('offset-coated'));
const shift: LightShift = {
  white: [95, 1, 1],
  shift(L, coloured, out) {
    out[0] = 0;
    out[1] = coloured * (95 - L) * 0.1;
    out[2] = 1;
  },
  spread: (_, coloured) => ({ a: 3 * coloured, b: 0 }),
  ground: ['a lamp'],
};

describe('inks under a light', () => {
  const lit = underLight(daylight, shift);
  const [day, night] = [new Float64Array(3), new Float64Array(3)];

  it('change by lightness and by how much coloured inks make of the grey', () => {
    for (const [inks, coloured] of [
      [[0, 0, 0, 0.5], 0],
      [[0.5, 0.4, 0.4, 0], 1],
    ] as const) {
      daylight.lab(inks, null, day);
      lit.lab(inks, null, night);
      assert.ok(Math.abs(night[1] - day[1] - coloured * (95 - day[0]) * 0.1) < 1e-9);
      assert.ok(Math.abs(night[2] - day[2] - 1) < 1e-9);
    }
  });

  it('are less sure by what the light leaves open, and say so', () => {
    const own = daylight.dataSpread(50, [0.5, 0.4, 0.4, 0]);
    assert.ok(Math.abs(lit.dataSpread(50, [0.5, 0.4, 0.4, 0]).a - Math.hypot(own.a, 3)) < 1e-9);
    assert.equal(lit.ground[lit.ground.length - 1], 'a lamp');
    assert.deepEqual(lit.white, [95, 1, 1]);
  });
});

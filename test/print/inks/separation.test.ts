import assert from 'node:assert/strict';
import { blackGenerations, inksOnAxis, neutralAxis } from '../../../src/print/inks/separation';
import { pressOf } from '../../../src/print/press';
import { foreignSet, labAt } from '../press-sets';

const { daylight, daylightAim } = pressOf({
  process: 'offset-coated',
  paper: 'gloss-coated',
  light: 'D50',
  inkLimit: null,
});

describe('separation to a neutral', () => {
  for (const generation of blackGenerations)
    it(`with ${generation.id} black meets the grey aim from paper to black, within the ink limit`, () => {
      const axis = neutralAxis(daylight, generation, 300);
      const inks = new Float64Array(4);
      const lab = new Float64Array(3);
      for (let L = 94; L > axis.black; L -= 1) {
        inksOnAxis(axis, L, inks);
        daylight.lab(inks, null, lab);
        const miss = Math.hypot(lab[0] - L, lab[1] - daylightAim.a(L), lab[2] - daylightAim.b(L));
        assert.ok(miss < 0.8, `L* ${L}: ${miss}`);
        assert.ok(inks[0] + inks[1] + inks[2] + inks[3] <= 3.0001);
      }
      assert.ok(axis.black < 14, `${axis.black}`);
    });

  it('holds more of the heavier black at every lightness', () => {
    const axes = blackGenerations.map(generation => neutralAxis(daylight, generation, 300));
    for (let L = 90; L > 20; L -= 5) {
      const [light, medium, heavy] = axes.map(axis => {
        const inks = new Float64Array(4);
        inksOnAxis(axis, L, inks);
        return inks[3];
      });
      assert.ok(light <= medium && medium <= heavy, `L* ${L}`);
    }
  });

  it('gives paper and black beyond its ends', () => {
    const axis = neutralAxis(daylight, blackGenerations[1], 300);
    const inks = new Float64Array(4);
    inksOnAxis(axis, 99, inks);
    assert.deepEqual([...inks], [0, 0, 0, 0]);
    inksOnAxis(axis, 2, inks);
    assert.deepEqual([...inks], [...axis.inks.slice(-4)]);
  });

  it('made for these data is near neutral on FOGRA39L as well', () => {
    // FOGRA39L of Debian's icc-profiles-free: the same paper and solids, other tone curves. The aim is the same.
    const foreign = labAt(foreignSet('FOGRA39L'));
    const axis = neutralAxis(daylight, blackGenerations[1], 300);
    const inks = new Float64Array(4);
    for (let L = 90; L > 20; L -= 5) {
      inksOnAxis(axis, L, inks);
      const [Lprint, a, b] = foreign(...Array.from(inks, v => v * 100));
      assert.ok(Math.hypot(a - daylightAim.a(Lprint), b - daylightAim.b(Lprint)) < 1.5, `L* ${L}: ${a} ${b}`);
    }
  });
});

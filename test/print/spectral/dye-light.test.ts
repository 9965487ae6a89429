import assert from 'node:assert/strict';
import { dyeLightChange } from '../../../src/print/spectral/dye-light';
import { amountsFor, dyePrint } from '../../../src/print/spectral/dye-print';
import { dyeSet } from '../../../src/print/spectral/dyes';
import { measuredScale } from '../../../src/print/spectral/measured-scale';
import { neutralTarget, STRAY } from '../../../src/print/spectral/neutral-target';
import type { LightId } from '../../../src/shared/target';

const dyes = dyeSet('chromogenic').mean;
const paper = { base: neutralTarget().paper, amount: 0 };

describe('what a light changes of dyes', () => {
  for (const light of ['D65', 'A', 'FL2', 'FL11', 'LED-B1', 'LED-B5'] as LightId[])
    it(`on the very paper that was measured is half way between measurement and dyes under ${light}`, () => {
      const change = dyeLightChange({ dyes: 'chromogenic', paper, light });
      const daylight = dyePrint({ dyes, paper, flare: STRAY, light: 'D50' });
      for (const { lab, measured, modelled } of measuredScale(dyes, light)) {
        const amounts = amountsFor(daylight, lab, [0.6, 0.6, 0.6]);
        // lighter greys are partly bare paper
        if ((amounts[0] + amounts[1] + amounts[2]) / 3 < 0.12) continue;
        const is = change(amounts, new Float64Array(3));
        for (const i of [1, 2]) {
          const middle = (measured[i] + modelled[i]) / 2;
          assert.ok(Math.abs(is[i] - middle) < 0.2, `L* ${lab[0]}: ${is[i]}, half way is ${middle}`);
        }
      }
    });
  it('is nothing under D50', () => {
    const none = dyeLightChange({ dyes: 'chromogenic', paper, light: 'D50' })(
      [0.5, 0.5, 0.5],
      new Float64Array(3),
    );
    for (const value of none) assert.ok(Math.abs(value) < 1e-3);
  });
});

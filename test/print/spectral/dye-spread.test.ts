import assert from 'node:assert/strict';
import { greyAim } from '../../../src/print/aim';
import { dyeLightSpread } from '../../../src/print/spectral/dye-spread';
import { dyeSet } from '../../../src/print/spectral/dyes';
import { measuredScale } from '../../../src/print/spectral/measured-scale';
import { paperSpectrum } from '../../../src/print/spectral/paper-spectrum';
import type { LightId } from '../../../src/shared/target';

const white = [93.5, 0.5, -3] as const;
const spread = (light: LightId) =>
  dyeLightSpread({
    dyes: 'chromogenic',
    paper: paperSpectrum({ white, brightener: 'faint', surface: 'photographic' }),
    white: white[0],
    flare: 0.004,
    aim: greyAim([...white], 6),
    light,
  });

describe('what is not known of dyes under a light', () => {
  it('nothing under D50, where all are calibrated, and nothing on bare paper', () => {
    assert.deepEqual(spread('D50')(50), { a: 0, b: 0 });
    assert.ok(spread('A')(93.5).a < 0.01);
  });

  it('is never less than the disagreement of model and measured scale (d / sqrt 2)', () => {
    for (const light of ['A', 'FL2', 'FL11', 'LED-B1', 'LED-B3'] as const) {
      const of = spread(light);
      for (const { lab, measured, modelled } of measuredScale(dyeSet('chromogenic').mean, light)) {
        const L = Math.round(lab[0] / 10) * 10;
        if (Math.abs(lab[0] - L) > 0.8 || L < 40) continue;
        assert.ok(of(L).a > 0.65 * Math.abs(modelled[1] - measured[1]), `${light} ${L}`);
        assert.ok(of(L).b > 0.65 * Math.abs(modelled[2] - measured[2]), `${light} ${L}`);
      }
    }
  });
});

import assert from 'node:assert/strict';
import { lightness, luminance } from '../../../src/colour/lab';
import { greyAim } from '../../../src/print/aim';
import { dyeLightSpread } from '../../../src/print/spectral/dye-spread';
import { dyeSet } from '../../../src/print/spectral/dyes';
import { measuredScale } from '../../../src/print/spectral/measured-scale';
import { STRAY } from '../../../src/print/spectral/neutral-target';
import { paperSpectrum } from '../../../src/print/spectral/paper-spectrum';
import type { LightId } from '../../../src/shared/target';

const white = [93.5, 0.5, -3] as const;
const spread = (light: LightId, borrowed = false) =>
  dyeLightSpread({
    dyes: 'chromogenic',
    paper: paperSpectrum({ white, brightener: 'faint', surface: 'photographic' }),
    white: white[0],
    flare: 0.004,
    aim: greyAim([...white], 6),
    light,
    borrowed,
  });

describe('what is not known of dyes under a light', () => {
  it('nothing under D50, where all are calibrated, and nothing on bare paper', () => {
    assert.deepEqual(spread('D50')(50), { a: 0, b: 0 });
    assert.ok(spread('A')(93.5).a < 0.01);
  });

  it('of borrowed dyes is at least the change itself, in every direction', () => {
    for (const light of ['FL2', 'FL11', 'LED-B3'] as const)
      for (const L of [35, 50, 65]) {
        const { a, b } = spread(light, true)(L);
        const own = spread(light)(L);
        assert.equal(a, b);
        assert.ok(a > 1.9 * Math.hypot(own.a, own.b), `${light} ${L}`);
      }
    assert.ok(spread('FL11', true)(50).b > 3);
  });

  it('is never less than the disagreement of model and measured scale (d / sqrt 2)', () => {
    for (const light of ['A', 'FL2', 'FL11', 'LED-B1', 'LED-B3'] as const) {
      const of = spread(light);
      for (const { lab, measured, modelled } of measuredScale(dyeSet('chromogenic').mean, light)) {
        // a print without the measurement's stray light is so much darker
        const L = lightness((luminance(lab[0]) - 100 * STRAY) / (1 - STRAY));
        if (lab[0] < 36) continue;
        assert.ok(of(L).a > 0.65 * Math.abs(modelled[1] - measured[1]), `${light} ${L}`);
        assert.ok(of(L).b > 0.65 * Math.abs(modelled[2] - measured[2]), `${light} ${L}`);
      }
    }
  });
});

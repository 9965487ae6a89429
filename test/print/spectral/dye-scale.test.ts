import assert from 'node:assert/strict';
import { greyAim } from '../../../src/print/aim';
import { dyePrint } from '../../../src/print/spectral/dye-print';
import { amountsOn, dyeScale } from '../../../src/print/spectral/dye-scale';
import { dyeSet } from '../../../src/print/spectral/dyes';
import { paperSpectrum } from '../../../src/print/spectral/paper-spectrum';

const white = [93.5, 0.5, -3] as const;
const print = dyePrint({
  dyes: dyeSet('chromogenic').mean,
  paper: paperSpectrum({ white, brightener: 'faint', surface: 'photographic' }),
  flare: 0.004,
  light: 'D50',
});
const aim = greyAim([...white], 6);
const scale = dyeScale(print, white[0], 6, aim);
const amounts = new Float64Array(3);

describe('calibration of a photographic printer', () => {
  it('R = G = B meets the grey aim of ISO 12647-2:2013 at every level', () => {
    for (let level = 0; level < 256; level++) {
      const lab = print.lab(amountsOn(scale, Array(3).fill(level / 255), amounts), new Float64Array(3));
      assert.ok(Math.hypot(lab[1] - aim.a(lab[0]), lab[2] - aim.b(lab[0])) < 0.001, `level ${level}: ${lab}`);
    }
  });

  it('between levels too, as a 16-bit picture has them', () => {
    for (let value = 0.002; value < 1; value += 0.0137) {
      const lab = print.lab(amountsOn(scale, [value, value, value], amounts), new Float64Array(3));
      assert.ok(Math.hypot(lab[1] - aim.a(lab[0]), lab[2] - aim.b(lab[0])) < 0.05, `${value}: ${lab}`);
    }
  });

  it('runs from the black to the paper, luminance in proportion to sRGB', () => {
    const L = (value: number) =>
      print.lab(amountsOn(scale, [value, value, value], amounts), new Float64Array(3))[0];
    assert.ok(Math.abs(L(0) - 6) < 0.01 && Math.abs(L(1) - 93.5) < 0.01);
    // file L* 53.59 (value 128): luminance 0.2158 of the way from 0.664 to 84.1, which is L* 50.3
    assert.ok(Math.abs(L(128 / 255) - 50.3) < 0.1, `${L(128 / 255)}`);
  });

  it('red light makes cyan dye alone; values beyond the range are clamped', () => {
    amountsOn(scale, [0.2, 1, 1.5], amounts);
    assert.ok(amounts[0] > 0.5);
    assert.deepEqual([amounts[1], amounts[2]], [0, 0]);
  });

  it('on a strongly yellow paper, whose aim no dyes over flare reach near black, still darkens to the end', () => {
    const yellow = [90, 0, 30] as const;
    const on = dyePrint({
      dyes: dyeSet('chromogenic').mean,
      paper: paperSpectrum({ white: yellow, brightener: 'none', surface: 'photographic' }),
      flare: 0.004,
      light: 'D50',
    });
    const own = dyeScale(on, yellow[0], 6, greyAim([...yellow], 6));
    let before = 100;
    for (let level = 255; level >= 0; level--) {
      const [L] = on.lab(amountsOn(own, Array(3).fill(level / 255), amounts), new Float64Array(3));
      assert.ok(L < before, `level ${level}`);
      before = L;
    }
    assert.ok(Math.abs(before - 6) < 0.1, `${before}`);
  });
});

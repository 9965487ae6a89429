import assert from 'node:assert/strict';
import { gammaCurve, lightnessCurve, srgbCurve } from '../../src/colour/tone-curves';

const near = (is: number, should: number, by = 1e-4) => {
  assert.ok(Math.abs(is - should) <= by, `${is} is not ${should}`);
};

describe('tone curves', () => {
  it('sRGB (IEC 61966-2-1): 128/255 is 0.21586, 10/255 is 0.003035, in the straight part', () => {
    near(srgbCurve.decode(128 / 255), 0.21586, 1e-5);
    near(srgbCurve.decode(10 / 255), 0.0030353, 1e-6);
    near(srgbCurve.decode(1), 1, 1e-12);
  });

  it('gamma 2.2: 128/255 is 0.2195', () => near(gammaCurve(2.2).decode(128 / 255), 0.2195));

  it('lightness: 0.5 is the luminance of L* 50, 0.184187', () =>
    near(lightnessCurve.decode(0.5), 0.184187, 1e-6));

  it('go there and back', () => {
    for (const curve of [srgbCurve, gammaCurve(1.8), lightnessCurve])
      for (const v of [0, 0.01, 0.05, 0.3, 1]) near(curve.encode(curve.decode(v)), v, 1e-7);
    near(srgbCurve.encode(srgbCurve.decode(-0.2)), -0.2, 1e-9);
  });
});

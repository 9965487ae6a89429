import assert from 'node:assert/strict';
import { dyeSet } from '../../../src/print/spectral/dyes';
import { measuredDeparture, measuredScale } from '../../../src/print/spectral/measured-scale';

const dyes = dyeSet('chromogenic').mean;

describe('a neutral scale measured on chromogenic paper', () => {
  it('has 22 steps from light to dark, and its dyes are found', () => {
    const steps = measuredScale(dyes, 'A');
    assert.equal(steps.length, 22);
    for (let i = 1; i < steps.length; i++) assert.ok(steps[i].lab[0] <= steps[i - 1].lab[0]);
  });

  it('its own greys move little by daylight, and the model says so too', () => {
    // D65 is a daylight: colours that agree under D50 hardly part (common practice, no source)
    for (const { measured, modelled } of measuredScale(dyes, 'D65')) {
      assert.ok(Math.hypot(measured[1], measured[2]) < 0.6);
      assert.ok(Math.hypot(modelled[1], modelled[2]) < 0.8);
    }
  });

  it('under a tungsten lamp measurement and model disagree in sign, which the forecast has to own up to', () => {
    const middle = measuredScale(dyes, 'A').find(step => step.lab[0] < 57)!;
    assert.ok(middle.measured[1] < -0.4 && middle.modelled[1] > 0.4, `${middle.measured} ${middle.modelled}`);
  });

  it('departs from the model by what lies between them, by nothing on white paper and in full black', () => {
    const of = measuredDeparture('chromogenic', dyes, 'A');
    const step = measuredScale(dyes, 'A')[8];
    assert.ok(Math.abs(of(step.lab[0]).a - (step.measured[1] - step.modelled[1])) < 0.1);
    assert.deepEqual(
      [of(100), of(0)],
      [
        { a: 0, b: 0 },
        { a: 0, b: 0 },
      ],
    );
  });
});

import assert from 'node:assert/strict';
import { bradford, cat16 } from '../../src/colour/adaptation';
import { apply } from '../../src/colour/matrix';

describe('chromatic adaptation', () => {
  it('takes white to white', () => {
    for (const cat of [cat16, bradford]) {
      const white = apply(
        cat([109.85, 100, 35.58], [96.42, 100, 82.49]),
        [109.85, 100, 35.58],
        new Float64Array(3),
      );
      assert.deepEqual(
        Array.from(white, value => Math.round(value * 1e6) / 1e6),
        [96.42, 100, 82.49],
      );
    }
  });

  it('meets the Bradford matrix D65 to D50 that ICC profiles of sRGB carry in their chad tag', () => {
    // `chad` of the ICC's own sRGB v4 profiles, of the older D65 0.9505, 1, 1.0891, rounded to five decimals
    const published = [1.04788, 0.02292, -0.05022, 0.02959, 0.99048, -0.01707, -0.00925, 0.01508, 0.75168];
    const m = bradford([95.047, 100, 108.883], [96.42, 100, 82.49]);
    published.forEach((value, i) => {
      assert.ok(Math.abs(m[i] - value) < 2e-4, `${i}: ${m[i]}`);
    });
  });

  it('CAT16 has the cones whose inverse matrix is published (CIECAM16, Li et al. 2017; in many libraries)', () => {
    // columns of the inverse: colours that one cone alone sees. Equal energy excites all three alike
    const cones = [
      [1.86206786, 0.38752654, -0.0158415],
      [-1.01125463, 0.62144744, -0.03412294],
      [0.14918677, -0.00897398, 1.04996444],
    ];
    for (let adapted = 0; adapted < 3; adapted++) {
      const twice = cat16(
        [1, 1, 1],
        cones[adapted].map(value => 1 + value),
      );
      cones.forEach((colour, i) => {
        apply(twice, colour, new Float64Array(3)).forEach((value, j) => {
          assert.ok(
            Math.abs(value - colour[j] * (i === adapted ? 2 : 1)) < 1e-6,
            `${adapted} ${i}: ${value}`,
          );
        });
      });
    }
  });

  it('CAT16 keeps a grey grey: what reflects all wavelengths alike has the colour of the light', () => {
    const grey = apply(
      cat16([100.96, 100, 64.35], [96.42, 100, 82.49]),
      [20.192, 20, 12.87],
      new Float64Array(3),
    );
    [19.284, 20, 16.498].forEach((value, i) => {
      assert.ok(Math.abs(grey[i] - value) < 1e-9);
    });
  });
});

import assert from 'node:assert/strict';
import { greyAim } from '../../../src/print/aim';
import { amountsFor, dyePrint } from '../../../src/print/spectral/dye-print';
import { dyeSet } from '../../../src/print/spectral/dyes';
import { paperSpectrum } from '../../../src/print/spectral/paper-spectrum';

const white = [93.5, 0.5, -3] as const;
const parts = {
  dyes: dyeSet('chromogenic').mean,
  paper: paperSpectrum({ white, brightener: 'faint', surface: 'photographic' }),
  flare: 0.004,
};
const daylight = dyePrint({ ...parts, light: 'D50' });
const aim = greyAim([...white], 6);
const grey = (L: number) => amountsFor(daylight, [L, aim.a(L), aim.b(L)], [0.5, 0.5, 0.5]);

describe('dyes on paper', () => {
  it('bare, are the paper', () => {
    const lab = daylight.lab([0, 0, 0], new Float64Array(3));
    white.forEach((value, i) => {
      assert.ok(Math.abs(lab[i] - value) < 1e-4);
    });
  });

  it('are found by the colour they print', () => {
    const lab = daylight.lab(grey(40), new Float64Array(3));
    [40, aim.a(40), aim.b(40)].forEach((value, i) => {
      assert.ok(Math.abs(lab[i] - value) < 1e-4);
    });
    assert.throws(
      () => amountsFor(daylight, [50, 120, 0], [0.5, 0.5, 0.5]),
      /no dyes print 50.0, 120.0, 0.0/,
    );
  });

  it('the deepest dyes stay above the flare: L* about 3.6 for 0.4 %', () => {
    // L* of Y = 0.4 by CIE 015:2018: 903.3 * 0.004
    assert.ok(Math.abs(daylight.lab([6, 6, 6], new Float64Array(3))[0] - 3.6) < 0.1);
  });

  // This project's own computation from the same generic dyes by another program: change of L*, a*, b* for +0.01 of
  // peak density of cyan, magenta, yellow
  const SENSITIVITIES: [number, number[][]][] = [
    [
      65,
      [
        [-0.2, -0.5, -0.31],
        [-0.35, 0.68, -0.44],
        [-0.05, -0.12, 0.77],
      ],
    ],
    [
      50,
      [
        [-0.16, -0.4, -0.25],
        [-0.28, 0.54, -0.34],
        [-0.05, -0.09, 0.61],
      ],
    ],
    [
      35,
      [
        [-0.12, -0.31, -0.19],
        [-0.2, 0.39, -0.24],
        [-0.03, -0.05, 0.45],
      ],
    ],
  ];
  for (const [L, expected] of SENSITIVITIES)
    it(`at L* ${L} each layer moves a grey as published densities say`, () => {
      const at = daylight.lab(grey(L), new Float64Array(3));
      expected.forEach((row, layer) => {
        const moved = grey(L);
        moved[layer] += 0.01;
        const lab = daylight.lab(moved, new Float64Array(3));
        row.forEach((value, i) => {
          assert.ok(
            Math.abs(lab[i] - at[i] - value) < 0.025,
            `layer ${layer}: ${lab.map((v, j) => v - at[j])}`,
          );
        });
      });
    });
});

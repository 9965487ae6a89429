import assert from 'node:assert/strict';
import { dyeSet, dyeTransmittance, dyeVariants } from '../../../src/print/spectral/dyes';

const set = dyeSet('chromogenic');

describe('dyes', () => {
  it('peak where those of chromogenic paper do: cyan 630-655, magenta 547-550, yellow 441-448 nm', () => {
    // ranges over five published data sheets; the grid has 10 nm
    const peaks = set.mean.map(dye => 400 + 10 * dye.indexOf(Math.max(...dye)));
    assert.ok(peaks[0] >= 630 && peaks[0] <= 660, `${peaks}`);
    assert.equal(peaks[1], 550);
    assert.ok(peaks[2] >= 440 && peaks[2] <= 450, `${peaks}`);
  });

  it('follow Beer-Lambert: densities add', () => {
    const one = dyeTransmittance(set.mean, [0.3, 0.2, 0.1], new Float64Array(31));
    const twice = dyeTransmittance(set.mean, [0.6, 0.4, 0.2], new Float64Array(31));
    one.forEach((value, i) => {
      assert.ok(Math.abs(twice[i] - value * value) < 1e-12);
      const density = 0.3 * set.mean[0][i] + 0.2 * set.mean[1][i] + 0.1 * set.mean[2][i];
      assert.ok(Math.abs(-Math.log10(value) - density) < 1e-12);
    });
  });

  it('vary as much as the published sets do, except at the very peak', () => {
    const variants = dyeVariants(set);
    assert.equal(variants.length, 6);
    for (const dye of [0, 1, 2])
      for (let i = 0; i < 31; i++) {
        const squares = variants.map(v => (v[dye][i] - set.mean[dye][i]) ** 2);
        const sd = Math.sqrt(squares.reduce((sum, s) => sum + s, 0));
        const peak = set.mean[dye][i] === Math.max(...set.mean[dye]);
        assert.ok(peak || Math.abs(sd - set.deviation[dye][i]) < 1e-12);
      }
  });
});

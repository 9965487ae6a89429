import assert from 'node:assert/strict';
import { lightness } from '../../../src/colour/lab';
import { gammaCurve } from '../../../src/colour/tone-curves';
import { LabGrid } from '../../../src/picture/meaning/grid';
import { untagged } from '../../../src/picture/meaning/untagged';
import { rampLightness } from '../../../src/remedy/grey/ramp';

describe('lightness of the levels of one channel', () => {
  it("is a curve's own at any depth: no two of 65536 levels are one", () => {
    const { meaning } = untagged({ space: 'grey', gamma: 1 / 1.8 });
    const ramp = rampLightness(meaning, 'grey', 65536);
    for (let i = 1; i < 65536; i++) assert.ok(ramp[i] > ramp[i - 1], `level ${i}`);
    const wanted = lightness(100 * gammaCurve(1.8).decode(20000 / 65535));
    assert.ok(Math.abs(ramp[20000] - wanted) < 1e-4);
  });
  it('is that of equal channels where there is only a grid', () => {
    const grid = new LabGrid(3, 5, 1, (values, out) => {
      for (let i = 0; i < out.length; i += 3)
        out[i] = 20 * values[i] + 30 * values[i + 1] + 50 * values[i + 2];
    });
    const ramp = rampLightness(grid, 'rgb', 256);
    [0, 51, 255].forEach(level => {
      assert.ok(Math.abs(ramp[level] - (100 * level) / 255) < 1e-3, `${level}`);
    });
  });
  it('is that of black alone on a grid of inks', () => {
    const grid = new LabGrid(4, 5, 1, (values, out) => {
      for (let i = 0; i < out.length / 3; i++) out[i * 3] = 100 - 80 * values[i * 4 + 3] - 10 * values[i * 4];
    });
    const ramp = rampLightness(grid, 'cmyk', 256);
    assert.ok(Math.abs(ramp[255] - 20) < 1e-3 && Math.abs(ramp[0] - 100) < 1e-3);
  });
});

import assert from 'node:assert/strict';
import { LabGrid } from '../../../src/picture/meaning/grid';

/** What a grid says of values 0-255. */
function read(grid: LabGrid, values: number[]): number[] {
  const lab = new Float32Array(3);
  grid.lab(Float32Array.from(values), 1, lab);
  return [...lab];
}

describe('a grid of Lab', () => {
  /** Linear in the channels: any sound interpolation gives it back. */
  const linear = (channels: 3 | 4) =>
    new LabGrid(channels, 5, 1, (values, out) => {
      for (let i = 0; i < out.length / 3; i++)
        for (let k = 0; k < 3; k++)
          for (let c = 0; c < channels; c++) out[i * 3 + k] += (k + 1) * (c + 2) * values[i * channels + c];
    });
  for (const channels of [3, 4] as const)
    it(`of ${channels} channels gives a linear function back anywhere`, () => {
      const grid = linear(channels);
      for (let n = 0; n < 200; n++) {
        const values = Array.from({ length: channels }, (_, c) => (n * 97 + c * 61 + n * c * 13) % 256);
        const sum = values.reduce((total, v, c) => total + ((c + 2) * v) / 255, 0);
        for (const [k, found] of read(grid, values).entries())
          assert.ok(Math.abs(found - (k + 1) * sum) < 1e-4);
      }
    });

  it('keeps the axis of equal values free of what lies beside it', () => {
    const grid = new LabGrid(3, 3, 0.7, (values, out) => {
      for (let i = 0; i < out.length / 3; i++) {
        const [r, g, b] = values.subarray(i * 3, i * 3 + 3);
        out[i * 3] = 100 * g;
        out[i * 3 + 1] = r === g && g === b ? 0 : 50;
      }
    });
    for (let v = 0; v < 256; v++) assert.equal(read(grid, [v, v, v])[1], 0);
  });
});

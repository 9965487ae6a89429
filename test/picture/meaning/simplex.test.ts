import assert from 'node:assert/strict';
import { LabGrid } from '../../../src/picture/meaning/grid';
import { interpolated } from '../../../src/picture/meaning/simplex';
import { random } from '../pass/random';

const UNIT = 600;

/** A grid whose L* bends in every channel. */
const grid = (channels: 3 | 4) =>
  new LabGrid(channels, 7, 0.8, (values, out) => {
    for (let i = 0; i < out.length / 3; i++)
      for (let c = 0; c < channels; c++)
        out[i * 3] += (c + 1) * 8 * values[i * channels + c] ** 2 + (c === 1 ? 9 * values[i * channels] : 0);
  });

/** Every pixel by the grid's own way for few values. */
function singly(meaning: LabGrid, data: Uint8Array | Uint16Array, step: number): number[] {
  const { channels } = meaning;
  const full = data instanceof Uint8Array ? 255 : 65535;
  const lab = new Float32Array(3);
  return Array.from({ length: data.length / step }, (_, i) => {
    const at = i * step;
    meaning.lab(
      Float32Array.from(data.subarray(at, at + channels), v => (v / full) * 255),
      1,
      lab,
    );
    return lab[0];
  });
}

describe('lightness of a whole raster on a grid', () => {
  for (const [channels, step, bits] of [
    [4, 4, 8],
    [4, 5, 8],
    [3, 3, 8],
    [3, 4, 16],
    [4, 4, 16],
  ] as const)
    it(`is that of each pixel: ${channels} channels, ${step} samples of ${bits} bits`, () => {
      const next = random(channels * step + bits);
      const raw = Array.from({ length: step * 3000 }, (_, i) =>
        // corners and equal values too
        i < step * 40 ? [0, 1, 1, 0][(i * 7) % 4] : i < step * 80 ? 0.37 : next(),
      );
      const data = bits === 8 ? Uint8Array.from(raw, v => v * 255) : Uint16Array.from(raw, v => v * 65535);
      const meaning = grid(channels);
      const out = new Uint16Array(3000);
      meaning.lightness(data, step, UNIT, out);
      // the way for few values rounds to an eighth of an 8-bit step
      const slack = 1 / UNIT + (bits === 8 ? 1e-3 : 0.05);
      singly(meaning, data, step).forEach((wanted, i) => {
        assert.ok(Math.abs(out[i] / UNIT - wanted) < slack, `pixel ${i}: ${out[i] / UNIT}, not ${wanted}`);
      });
    });
  it('is held within what the numbers take', () => {
    const out = new Uint16Array(2);
    const nodes = { values: Float32Array.of(-5, 90), side: 2, strides: [1], place: (v: number) => v };
    interpolated(nodes, Uint8Array.of(0, 0, 0, 255, 0, 0), 3, 1000, out);
    assert.deepEqual([...out], [0, 65535]);
  });
});

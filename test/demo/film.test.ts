import assert from 'node:assert/strict';
import { develop } from '../../src/demo/film';
import { expose } from '../../src/demo/plate';

const flat = (value: number) => expose(60, 40, () => value);
const mean = (tones: Float32Array) => tones.reduce((sum, tone) => sum + tone, 0) / tones.length;

describe('demo: film', () => {
  it('turns mid grey into mid grey (0.46 in the numbers of sRGB)', () => {
    const tone = mean(develop(flat(0.18), { vignette: 0, grain: 0 }));
    assert.ok(Math.abs(tone - 0.46) < 0.01, `${tone}`);
  });

  it('never leaves the scale between its black and its white, and more light is never darker', () => {
    let last = 0;
    for (const light of [0, 0.001, 0.02, 0.1, 0.18, 0.5, 1, 40]) {
      const tones = develop(flat(light), { vignette: 0, grain: 0, black: 0.05, white: 0.9 });
      assert.ok(tones[0] >= 0.05 - 1e-6 && tones[0] <= 0.9 + 1e-6 && tones[0] >= last);
      last = tones[0];
    }
  });

  it('grains strongest in the mid-tones, the same for a seed', () => {
    const scatter = (value: number) => {
      const tones = develop(flat(value), { vignette: 0 });
      const middle = mean(tones);
      return Math.sqrt(mean(tones.map(tone => (tone - middle) ** 2)));
    };
    assert.ok(scatter(0.18) > 1.5 * scatter(0.004));
    assert.deepEqual(develop(flat(0.2), { seed: 3 }), develop(flat(0.2), { seed: 3 }));
  });
});

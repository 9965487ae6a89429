import assert from 'node:assert/strict';
import { pressMeaning } from '../../../src/picture/meaning/press';
import { untagged } from '../../../src/picture/meaning/untagged';
import { faintColourRemoved } from '../../../src/remedy/grey/colour-kept';
import { picture } from '../../picture/pass/random';

const BELOW = 10;

describe('faint colour removed', () => {
  it('leaves nothing up to the limit and everything from half as much again; lightness stays everywhere', () => {
    const samples = picture(2, 80, 60, 'rgb', 8, 'noise', 'none');
    // from grey to full colour, row by row
    for (let i = 0; i < samples.data.length; i++)
      samples.data[i] = 128 + ((samples.data[i] - 128) * Math.floor(i / 240)) / 120;
    const { meaning } = untagged({ space: 'rgb' });
    const lab = new Float32Array(80 * 60 * 3);
    meaning.lab(Float32Array.from(samples.data), 4800, lab);
    const { index, lightness, colour } = faintColourRemoved(samples, meaning, BELOW);
    const seen = { none: 0, some: 0, all: 0 };
    for (let i = 0; i < 4800; i++) {
      const [L, a, b] = lab.subarray(i * 3, i * 3 + 3);
      const was = Math.hypot(a, b);
      const is = Math.hypot(colour![i * 2], colour![i * 2 + 1]) / 256;
      assert.ok(Math.abs(lightness[index[i]] - L) < 0.01, `L* ${L} became ${lightness[index[i]]}`);
      if (was <= BELOW) assert.equal(is, 0, `chroma ${was}`);
      else if (was >= 1.5 * BELOW) assert.ok(Math.abs(is - was) < 0.01, `chroma ${was} became ${is}`);
      else assert.ok(is <= was + 0.01, `chroma ${was} became ${is}`);
      seen[was <= BELOW ? 'none' : was < 1.5 * BELOW ? 'some' : 'all']++;
    }
    assert.ok(Math.min(...Object.values(seen)) > 50, JSON.stringify(seen));
  });
  it('goes by the meaning of inks', () => {
    const samples = picture(3, 10, 10, 'cmyk', 8, 'noise', 'none');
    samples.data.fill(0, 0, 4);
    const { index, lightness, colour } = faintColourRemoved(samples, pressMeaning(), BELOW);
    assert.ok(Math.abs(lightness[index[0]] - 100) < 0.01);
    assert.deepEqual([colour![0], colour![1]], [0, 0]);
  });
});

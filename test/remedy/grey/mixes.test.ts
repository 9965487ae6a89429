import assert from 'node:assert/strict';
import { pressMeaning } from '../../../src/picture/meaning/press';
import type { Meaning } from '../../../src/picture/meaning/types';
import { eachMix } from '../../../src/remedy/grey/mixes';
import { picture, random } from '../../picture/pass/random';

const hundredth = (lab: Float32Array, n: number, out: Float32Array) => {
  for (let i = 0; i < n; i++) out[i] = Math.round(lab[i * 3] * 100);
};

describe('every mix by the meaning of a picture', () => {
  for (const [space, depth, opacity] of [
    ['cmyk', 8, 'none'],
    ['cmyk', 16, 'soft'],
    ['rgb', 16, 'none'],
  ] as const)
    it(`is what the meaning says of it alone: ${space}, ${depth} bits, alpha ${opacity}`, () => {
      const samples = picture(depth, 90, 70, space, depth, 'noise', opacity);
      const meaning: Meaning =
        space === 'cmyk'
          ? pressMeaning()
          : {
              lab: (v, n, out) => {
                for (let i = 0; i < n; i++)
                  out[i * 3] = (v[i * 3] + 2 * v[i * 3 + 1] + 3 * v[i * 3 + 2]) / 16;
              },
            };
      const found = eachMix(samples, meaning, 1, hundredth, new Uint16Array(90 * 70));
      const step = samples.channels + (samples.alpha ? 1 : 0);
      const lab = new Float32Array(3);
      const scale = depth === 8 ? 1 : 1 / 257;
      found.forEach((value, i) => {
        const at = i * step;
        meaning.lab(
          Float32Array.from(samples.data.subarray(at, at + samples.channels), v => v * scale),
          1,
          lab,
        );
        assert.ok(Math.abs(value - lab[0] * 100) <= 0.51, `pixel ${i}: ${value}, not ${lab[0] * 100}`);
      });
    });

  it('asks for a mix that comes again only now and then', () => {
    const samples = picture(1, 300, 300, 'cmyk', 8, 'noise', 'none');
    const next = random(5);
    const kinds = Array.from({ length: 50 }, () => [0, 0, 0, 0].map(() => Math.floor(next() * 256)));
    for (let i = 0; i < samples.data.length; i += 4)
      kinds[Math.floor(next() * 50)].forEach((v, c) => {
        samples.data[i + c] = v;
      });
    let asked = 0;
    const press = pressMeaning();
    const counting: Meaning = {
      lab(values, n, out) {
        asked += n;
        press.lab(values, n, out);
      },
    };
    eachMix(samples, counting, 1, hundredth, new Uint16Array(90_000));
    assert.ok(asked < 10_000, `asked ${asked} times of 90000`);
  });

  it('writes several numbers a pixel', () => {
    const samples = picture(4, 60, 60, 'cmyk', 8, 'noise', 'none');
    const all = (lab: Float32Array, n: number, out: Float32Array) => {
      for (let i = 0; i < n * 3; i++) out[i] = Math.round(lab[i] * 100);
    };
    const found = eachMix(samples, pressMeaning(), 3, all, new Int16Array(60 * 60 * 3));
    const lab = new Float32Array(60 * 60 * 3);
    pressMeaning().lab(Float32Array.from(samples.data), 3600, lab);
    found.forEach((value, i) => {
      assert.ok(Math.abs(value - lab[i] * 100) <= 0.51, `${i}`);
    });
  });
});

import assert from 'node:assert/strict';
import { lightness } from '../../../src/colour/lab';
import { srgbCurve } from '../../../src/colour/tone-curves';
import { blackLightness } from '../../../src/picture/meaning/press';
import type { Meaning } from '../../../src/picture/meaning/types';
import { untagged } from '../../../src/picture/meaning/untagged';
import type { Samples } from '../../../src/picture/types';
import { greyPlane } from '../../../src/remedy/grey';
import { greyOfLab } from '../../../src/remedy/grey/method';
import type { GreyMethod } from '../../../src/shared/remedy';
import { picture } from '../../picture/pass/random';

const LIGHTNESS: GreyMethod = { kind: 'lightness' };
const METHODS: GreyMethod[] = [
  LIGHTNESS,
  { kind: 'luma' },
  { kind: 'mix', red: 0.9, green: 0.4, blue: -0.3 },
];

const meaningOf = ({ space }: Samples) => untagged({ space }).meaning;

/** L* pixel by pixel, by the meaning alone. */
function singly(samples: Samples, meaning: Meaning, method: GreyMethod): number[] {
  const { data, channels, alpha, space } = samples;
  const step = channels + (alpha ? 1 : 0);
  const full = data instanceof Uint8Array ? 255 : data instanceof Uint16Array ? 65535 : 1;
  const units =
    space === 'lab' ? [1 / 327.67, 1 / 256, 1 / 256] : [255 / full, 255 / full, 255 / full, 255 / full];
  const lab = new Float32Array(3);
  return Array.from({ length: data.length / step }, (_, i) => {
    meaning.lab(
      Float32Array.from({ length: channels }, (_, c) => data[i * step + c] * units[c]),
      1,
      lab,
    );
    return Math.min(100, Math.max(0, greyOfLab(method)(lab[0], lab[1], lab[2])));
  });
}

function assertLike(samples: Samples, method: GreyMethod, slack: number) {
  const meaning = meaningOf(samples);
  const { index, lightness } = greyPlane(samples, meaning, method);
  singly(samples, meaning, method).forEach((wanted, i) => {
    assert.ok(
      Math.abs(lightness[index[i]] - wanted) < slack,
      `pixel ${i}: ${lightness[index[i]]}, not ${wanted}`,
    );
  });
}

function lab(seed: number): Samples {
  const noise = picture(seed, 40, 30, 'rgb', 'float', 'noise', 'none').data;
  const data = Int16Array.from(noise, (v, i) => Math.round(i % 3 === 0 ? v * 32767 : (v - 0.5) * 60 * 256));
  return { width: 40, height: 30, channels: 3, alpha: false, space: 'lab', data };
}

describe('a picture as lightness', () => {
  for (const method of METHODS) {
    const name = method.kind;
    // the meaning itself rounds to an eighth of an 8-bit step
    for (const depth of [8, 16, 'float'] as const)
      it(`of colour, ${depth}: ${name} as the picture's meaning has it, pixel by pixel`, () =>
        assertLike(picture(3, 50, 40, 'rgb', depth, 'noise', 'none'), method, 0.15));
    it(`of inks: ${name}`, () => assertLike(picture(4, 50, 40, 'cmyk', 8, 'noise', 'none'), method, 0.02));
    it(`of Lab: ${name}`, () => assertLike(lab(5), method, 0.02));
  }

  for (const bits of [8, 16] as const) {
    const levels = 2 ** bits;
    it(`of R = G = B is the stored levels themselves, at ${bits} bits, by any method`, () => {
      const samples = picture(6, 64, 64, 'rgb', bits, 'equal', 'none');
      for (const method of METHODS) {
        const plane = greyPlane(samples, meaningOf(samples), method);
        assert.equal(plane.lightness.length, levels);
        plane.index.forEach((level, i) => {
          assert.equal(level, samples.data[i * 3]);
        });
        for (const level of [0, 1, levels >> 5, levels >> 1, levels - 1]) {
          const wanted = lightness(100 * srgbCurve.decode(level / (levels - 1)));
          assert.ok(Math.abs(plane.lightness[level] - wanted) < 1e-4, `level ${level}`);
        }
      }
    });
  }

  it('of black ink alone is its amounts, as light as TR 006 measured', () => {
    const samples = picture(7, 20, 20, 'cmyk', 8, 'noise', 'none');
    for (let i = 0; i < samples.data.length; i++) if (i % 4 < 3) samples.data[i] = 0;
    const plane = greyPlane(samples, meaningOf(samples), LIGHTNESS);
    plane.index.forEach((level, i) => {
      assert.equal(level, samples.data[i * 4 + 3]);
    });
    for (const level of [0, 60, 255])
      assert.ok(Math.abs(plane.lightness[level] - blackLightness(level / 255)) < 1e-4);
  });

  it('is the same by the kernel as by plain arithmetic, which opacity asks for, in a picture of several parts', () => {
    const extreme: GreyMethod = { kind: 'mix', red: 3000, green: -2000, blue: -999 };
    const beyondTheKernel: GreyMethod = { kind: 'mix', red: 1e9, green: -1e9, blue: 1 };
    for (const method of [...METHODS, extreme, beyondTheKernel]) {
      const samples = picture(10, 331, 149, 'rgb', 8, 'noise', 'none');
      const data = new Uint8Array((samples.data.length / 3) * 4).fill(255);
      for (let i = 0; i < samples.data.length; i++) data[Math.floor(i / 3) * 4 + (i % 3)] = samples.data[i];
      const meaning = meaningOf(samples);
      const { index } = greyPlane(samples, meaning, method);
      const singly = greyPlane({ ...samples, alpha: true, data }, meaning, method).index;
      assert.ok(index instanceof Uint16Array && index.length === 331 * 149);
      // a sum that lies between two steps may be rounded either way
      const off = index.filter((step, i) => step !== singly[i]).length;
      assert.ok(off < index.length / 1000, `${JSON.stringify(method)}: ${off} pixels`);
    }
  });

  it('has alpha apart where not all is opaque', () => {
    const soft = picture(8, 30, 20, 'rgb', 16, 'near', 'soft');
    const { alpha } = greyPlane(soft, meaningOf(soft), LIGHTNESS);
    alpha!.forEach((value, i) => {
      assert.equal(value, soft.data[i * 4 + 3]);
    });
    assertLike(soft, LIGHTNESS, 0.15);
    const opaque = picture(9, 30, 20, 'grey', 8, 'noise', 'opaque');
    assert.equal(greyPlane(opaque, meaningOf(opaque), LIGHTNESS).alpha, null);
  });
});

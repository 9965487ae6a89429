import assert from 'node:assert/strict';
import { plainProfile } from '../../../src/colour/icc/write';
import { lightness } from '../../../src/colour/lab';
import { srgbToLab } from '../../../src/colour/srgb';
import { gammaCurve, srgbCurve } from '../../../src/colour/tone-curves';
import { readingOf } from '../../../src/picture/meaning';
import { blackLightness } from '../../../src/picture/meaning/press';
import { encode } from '../../../src/remedy/encode';
import { linearLightness, PER_L, type TonePlane } from '../../../src/remedy/grey/plane';
import { RemedyError } from '../../../src/remedy/remedy-error';
import { wishFor } from '../support';

/** L* 0 to 100 in steps of 0.5. */
const WANTED = Array.from({ length: 201 }, (_, i) => i / 2);

const plane = (change: Partial<TonePlane> = {}): TonePlane => ({
  width: WANTED.length,
  height: 1,
  index: Uint16Array.from(WANTED, L => Math.round(L * PER_L)),
  lightness: linearLightness(),
  alpha: null,
  tint: null,
  colour: null,
  ...change,
});

const srgbGrey = (value: number) => lightness(100 * srgbCurve.decode(value));

describe('stored numbers', () => {
  for (const bits of [8, 16] as const) {
    const full = 2 ** bits - 1;
    // half of the largest step: the deepest greys of sRGB, the lights of black ink
    const slack = bits === 8 ? 0.3 : 0.002;
    it(`of R = G = B have the lightness, to the nearest of ${bits} bits, and sRGB's profile`, async () => {
      const stored = await encode(plane(), wishFor(), bits);
      assert.deepEqual([stored.space, stored.bits, stored.data.length], ['rgb', bits, 603]);
      const { index, lightness } = plane();
      WANTED.forEach((_, i) => {
        const L = lightness[index[i]];
        const [r, g, b] = stored.data.subarray(i * 3, i * 3 + 3);
        assert.ok(r === g && g === b);
        assert.ok(Math.abs(srgbGrey(g / full) - L) < slack, `L* ${L}: ${g}`);
        // the nearest: neither neighbour is nearer
        for (const other of [g - 1, g + 1])
          assert.ok(Math.abs(srgbGrey(g / full) - L) <= Math.abs(srgbGrey(other / full) - L) + 1e-4);
      });
      assert.equal((await readingOf({ space: 'rgb', icc: stored.icc })).profile!.description, 'sRGB');
    });
    it(`of one channel are sRGB's, ${bits} bits, and the profile says so`, async () => {
      const [one, three] = await Promise.all([
        encode(plane(), wishFor({ to: 'single-channel' }), bits),
        encode(plane(), wishFor(), bits),
      ]);
      one.data.forEach((value, i) => {
        assert.equal(value, three.data[i * 3]);
      });
      assert.equal(
        (await readingOf({ space: 'grey', icc: one.icc })).profile!.description,
        'Grey, tone curve of sRGB',
      );
    });
    it(`of black ink are the amounts that TR 006 makes so light, ${bits} bits, without a profile`, async () => {
      const stored = await encode(plane(), wishFor({ to: 'black-only' }), bits);
      assert.equal(stored.icc, null);
      WANTED.filter(L => L > blackLightness(1)).forEach(L => {
        const i = WANTED.indexOf(L);
        assert.deepEqual([...stored.data.subarray(i * 4, i * 4 + 3)], [0, 0, 0]);
        const found = blackLightness(stored.data[i * 4 + 3] / full);
        assert.ok(Math.abs(found - L) < slack, `L* ${L}: ${found}`);
      });
    });
  }

  it('of equal numbers are those numbers', async () => {
    const index = Uint8Array.from({ length: 256 }, (_, i) => i);
    const levels = {
      width: 256,
      height: 1,
      index,
      lightness: Float32Array.from(index, v => srgbGrey(v / 255)),
    };
    const stored = await encode(plane(levels), wishFor({ to: 'single-channel' }), 8);
    assert.deepEqual(stored.data, index);
    const deep = await encode(plane(levels), wishFor({ to: 'single-channel', bits: 16 }), 8);
    deep.data.forEach((value, i) => {
      assert.equal(value, i * 257);
    });
  });

  it('have more than 8 bits only where the source or the wish has', async () => {
    assert.equal((await encode(plane(), wishFor(), 1)).bits, 8);
    assert.equal((await encode(plane(), wishFor(), 12)).bits, 16);
    assert.equal((await encode(plane(), wishFor({ bits: 8 }), 16)).bits, 8);
  });

  it('of a named grey profile are its own', async () => {
    const greyProfile = plainProfile({
      description: 'House',
      decode: gammaCurve(1.8).decode,
      primaries: null,
    });
    const stored = await encode(plane(), wishFor({ to: 'single-channel', greyProfile }), 16);
    assert.equal(stored.icc, greyProfile);
    WANTED.forEach((L, i) => {
      const found = lightness(100 * (stored.data[i] / 65535) ** 1.8);
      assert.ok(Math.abs(found - L) < 0.05, `L* ${L}: ${found}`);
    });
  });

  it('refuse a profile that is none of one grey channel, in words', async () => {
    const of = (greyProfile: Uint8Array) =>
      encode(plane(), wishFor({ to: 'single-channel', greyProfile }), 8);
    const three = plainProfile({
      description: 'Three',
      decode: v => v,
      primaries: [40, 35, 21, 22, 70, 8, 1, 7, 74],
    });
    await assert.rejects(
      of(three),
      (error: Error) =>
        error instanceof RemedyError && /"Three" is no profile of one grey channel/.test(error.message),
    );
    await assert.rejects(of(Uint8Array.of(1, 2, 3)), /damaged/);
  });

  it('carry a tint at the lightness that was wanted', async () => {
    const tint = Float32Array.from({ length: 65536 * 2 }, (_, i) => (i % 2 ? 8 : 2));
    const { data } = await encode(plane({ tint }), wishFor({ to: 'rgb-toned' }), 16);
    const lab = new Float64Array(3);
    WANTED.forEach((L, i) => {
      srgbToLab(
        Array.from(data.subarray(i * 3, i * 3 + 3), v => v / 65535),
        lab,
      );
      assert.ok(Math.abs(lab[0] - L) < 0.05, `L* ${L}: ${lab[0]}`);
      if (L >= 15 && L <= 90) assert.ok(Math.hypot(lab[1] - 2, lab[2] - 8) < 0.05, `L* ${L}: ${lab}`);
    });
  });

  it('keep the colour of those pixels that keep it', async () => {
    const colour = new Int16Array(WANTED.length * 2);
    colour.set([10 * 256, -20 * 256], 100 * 2);
    const { data } = await encode(plane({ colour }), wishFor({ below: 5 }), 8);
    const lab = srgbToLab(
      Array.from(data.subarray(300, 303), v => v / 255),
      new Float64Array(3),
    );
    assert.ok(Math.hypot(lab[0] - 50, lab[1] - 10, lab[2] + 20) < 0.5, `${lab}`);
    assert.ok(data[297] === data[298] && data[298] === data[299]);
  });

  it('have alpha last, at their own depth', async () => {
    const alpha = Uint8Array.from(WANTED, (_, i) => i);
    for (const [to, step] of [
      ['single-channel', 2],
      ['rgb-neutral', 4],
      ['rgb-toned', 4],
    ] as const) {
      const tint = to === 'rgb-toned' ? new Float32Array(65536 * 2) : null;
      const stored = await encode(plane({ alpha, tint }), wishFor({ to, bits: 16 }), 8);
      assert.equal(stored.alpha, true);
      assert.equal(stored.data[5 * step + step - 1], 5 * 257);
    }
  });

  it('take 16 bits where 8 are too few for a grey profile, unless 8 are asked for', async () => {
    const bitsFor = async (gamma: number, bits: 8 | null) => {
      const { decode } = gammaCurve(gamma);
      const greyProfile = plainProfile({ description: 'Grey', decode, primaries: null });
      return (await encode(plane(), wishFor({ to: 'single-channel', greyProfile, bits }), 8)).bits;
    };
    assert.equal(await bitsFor(1, null), 16);
    assert.equal(await bitsFor(1, 8), 8);
    assert.equal(await bitsFor(2.2, null), 8);
  });
});

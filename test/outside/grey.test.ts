import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { column, parseCgats } from '../../src/colour/cgats';
import { lightness, luminance } from '../../src/colour/lab';
import { measuredPress, pressDataText } from '../../src/colour/press';
import { srgbCurve } from '../../src/colour/tone-curves';
import { sharp } from '../../src/picture/decode-sharp';
import { pressMeaning } from '../../src/picture/meaning/press';
import { plainTiff } from '../../src/picture/raster-tiff';
import type { Header, Samples } from '../../src/picture/types';
import { greyProfile, srgbProfile } from '../../src/remedy/encode/profiles';
import { greyPlane } from '../../src/remedy/grey';
import { remedyPicture } from '../../src/remedy/picture';
import { readPicture } from '../../src/remedy/source';
import type { GreyMethod, RemedyWish } from '../../src/shared/remedy';
import { wishFor } from '../remedy/support';
import { need } from '../tools/need';
import { chart } from './chart';

const LIGHTNESS: GreyMethod = { kind: 'lightness' };
const greyL = (value: number) => lightness(100 * srgbCurve.decode(value));

let folder: string;
const inFolder = (name: string) => path.join(folder, name);

/** A picture of stated pixels, in a file. */
async function pixels(name: string, rgb: readonly (readonly number[])[]): Promise<string> {
  const raw = { width: rgb.length, height: 1, channels: 3 } as const;
  await sharp(Uint8Array.from(rgb.flat()), { raw }).png().toFile(inFolder(name));
  return inFolder(name);
}

/** Any samples in a TIFF, with a profile or without. */
function tiff(name: string, samples: Samples, icc: Uint8Array | null = null): string {
  fs.writeFileSync(inFolder(name), plainTiff(samples, { icc, orientation: 1 } as Header));
  return inFolder(name);
}

const rowOf = (space: Samples['space'], channels: 3 | 4, data: Samples['data']): Samples => ({
  width: data.length / channels,
  height: 1,
  channels,
  alpha: false,
  space,
  data,
});

/** L* of every pixel of a converted file. */
async function converted(file: string, wish: Partial<RemedyWish>): Promise<number[]> {
  const result = inFolder('result.tmp');
  await remedyPicture(file, result, wishFor(wish));
  const { samples, reading } = await readPicture(result);
  const { index, lightness } = greyPlane(samples, reading.meaning, LIGHTNESS);
  return Array.from(index, i => lightness[i]);
}

/** Any colours, dark and light, dull and strong. */
const COLOURS = Array.from({ length: 300 }, (_, i) => [
  (i * 67) % 256,
  (i * 131 + 40) % 256,
  (i * 29 + 90) % 256,
]);

const rms = (errors: number[]) => Math.hypot(...errors) / Math.sqrt(errors.length);

describe('colour to grey beside what others make of it', function () {
  this.timeout(120_000);
  before(() => {
    folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-grey-'));
  });
  after(() => fs.rmSync(folder, { recursive: true }));

  describe('on the common 24-patch chart', () => {
    const published = chart.map(({ lab }) => lab[0]);
    const errorsOf = async (wish: Partial<RemedyWish>) => {
      const file = await pixels(
        'chart.png',
        chart.map(({ rgb }) => rgb),
      );
      return (await converted(file, wish)).map((L, i) => L - published[i]);
    };

    for (const to of ['rgb-neutral', 'single-channel'] as const)
      it(`the default keeps the published lightness, as ${to}: RMS error under 1`, async () => {
        const errors = await errorsOf({ to });
        assert.ok(rms(errors) < 1, `${rms(errors)}`);
        assert.ok(Math.max(...errors.map(Math.abs)) < 1.5);
      });
    it('the default keeps the order of lightness of all patches, from CIELAB itself and into black ink too', async () => {
      const stored = chart.flatMap(({ lab: [L, a, b] }) => [L * 327.67, a * 256, b * 256]);
      const file = tiff('chart.tif', rowOf('lab', 3, Int16Array.from(stored, Math.round)));
      const order = (tones: number[]) => [...tones.keys()].sort((i, j) => tones[i] - tones[j]);
      for (const to of ['rgb-neutral', 'single-channel', 'black-only'] as const) {
        const found = await converted(file, { to });
        assert.deepEqual(order(found), order(published), to);
        if (to !== 'black-only') assert.ok(rms(found.map((L, i) => L - published[i])) < 0.02);
      }
    });

    // what other ways do to it: figures of this project's collection, computed from the same chart; within a tenth
    const WAYS: [name: string, rms: number, grey: (r: number, g: number, b: number) => number][] = [
      ['luma of BT.709', 2.9, (r, g, b) => 0.2126 * r + 0.7152 * g + 0.0722 * b],
      ['luma of BT.601', 3.2, (r, g, b) => 0.299 * r + 0.587 * g + 0.114 * b],
      ['the mean of the channels', 7.6, (r, g, b) => (r + g + b) / 3],
      [
        'the middle of the largest and smallest channel',
        10.1,
        (r, g, b) => (Math.max(r, g, b) + Math.min(r, g, b)) / 2,
      ],
      ['the largest channel', 17.1, (r, g, b) => Math.max(r, g, b)],
      ['green alone', 7.2, (_, g) => g],
      ['red alone', 19.5, r => r],
      ['blue alone', 26.9, (_r, _g, b) => b],
    ];
    for (const [name, wanted, grey] of WAYS)
      it(`${name} is off by ${wanted} RMS, and the default by much less`, async () => {
        const errors = chart.map(
          ({ rgb: [r, g, b] }, i) => greyL(grey(r / 255, g / 255, b / 255)) - published[i],
        );
        assert.ok(Math.abs(rms(errors) / wanted - 1) < 0.1, `${rms(errors)}`);
        assert.ok(rms(await errorsOf({})) < rms(errors) / 3);
      });
    it('luma is luma of BT.709', async () => {
      const errors = await errorsOf({ grey: { kind: 'luma' } });
      assert.ok(Math.abs(rms(errors) - 2.8) < 0.1, `${rms(errors)}`);
    });
  });

  describe('ImageMagick', () => {
    /** Per pixel, 0-1, before it is stored for a screen. */
    function imagemagick(file: string, how: string): number[] {
      const out = execFileSync(
        need('/usr/bin/convert', 'imagemagick'),
        [file, ...how.split(' '), '-depth', '16', 'txt:-'],
        { encoding: 'utf8' },
      );
      return [...out.matchAll(/^\d+,\d+: \(([\d.]+)/gm)].map(([, value]) => Number(value) / 65535);
    }
    // half an 8-bit step is up to 0.3 L*
    it('has the same luminance (Rec709Luminance) as a mix by the same weights, to 0.35 L*', async () => {
      const file = await pixels('colours.png', COLOURS);
      const ours = await converted(file, { grey: { kind: 'mix', red: 0.2126, green: 0.7152, blue: 0.0722 } });
      const light = imagemagick(file, '-grayscale Rec709Luminance').map(Y => lightness(100 * Y));
      assert.equal(light.length, COLOURS.length);
      ours.forEach((L, i) => {
        assert.ok(Math.abs(L - light[i]) < 0.35, `${COLOURS[i]}: ${L}, not ${light[i]}`);
      });
    });
    it('has nearly the same L* by default: it counts under D65, we under D50 as ICC profiles do', async () => {
      const file = await pixels('colours.png', COLOURS);
      const ours = await converted(file, {});
      const errors = imagemagick(file, '-colorspace LAB').map((v, i) => v * 100 - ours[i]);
      // the adaptation takes a sixth from blue's share of luminance and gives it to red
      assert.ok(
        Math.max(...errors.map(Math.abs)) < 3 && rms(errors) < 1,
        `${Math.max(...errors)}, ${rms(errors)}`,
      );
    });
    it('has the same luma (Rec709Luma) as the way by luma', async () => {
      const file = await pixels('colours.png', COLOURS);
      const ours = await converted(file, { grey: { kind: 'luma' } });
      imagemagick(file, '-grayscale Rec709Luma').forEach((v, i) => {
        assert.ok(Math.abs(greyL(v) - ours[i]) < 0.35, `${COLOURS[i]}`);
      });
    });
  });

  describe('LittleCMS', () => {
    const profiles = () => {
      fs.writeFileSync(inFolder('srgb.icc'), srgbProfile());
      fs.writeFileSync(inFolder('grey.icc'), greyProfile());
      return { srgb: inFolder('srgb.icc'), grey: inFolder('grey.icc') };
    };
    function transicc(args: string[], values: readonly (readonly number[])[]): number[][] {
      const out = execFileSync(
        need('/usr/bin/transicc', 'liblcms2-utils'),
        ['-n', '-t', '1', '-c', '0', '-d', '1', ...args],
        {
          input: values.map(v => `${v.join('\n')}\n`).join(''),
          encoding: 'utf8',
          stdio: ['pipe', 'pipe', 'ignore'],
        },
      );
      return out.match(/[^\n]+/g)!.map(line => line.match(/-?\d+(\.\d+)?/g)!.map(Number));
    }

    it("takes our profile of sRGB for what Debian's says (0.05 dE76)", () => {
      const reference = need('/usr/share/color/icc/sRGB.icc', 'icc-profiles-free');
      const ours = transicc(['-i', profiles().srgb, '-o', '*Lab4'], COLOURS);
      const theirs = transicc(['-i', reference, '-o', '*Lab4'], COLOURS);
      assert.equal(ours.length, COLOURS.length);
      ours.forEach((lab, i) => {
        const off = Math.hypot(...lab.map((v, c) => v - theirs[i][c]));
        assert.ok(off < 0.05, `${COLOURS[i]}: ${lab}, not ${theirs[i]}`);
      });
    });
    it('converts colour by our two profiles to the very grey numbers, to half an 8-bit step', async () => {
      const { srgb, grey } = profiles();
      const file = await pixels('colours.png', COLOURS);
      const result = inFolder('result.tmp');
      await remedyPicture(file, result, wishFor({ to: 'single-channel', bits: 16 }));
      const { samples } = await readPicture(result);
      transicc(['-i', srgb, '-o', grey], COLOURS).forEach(([value], i) => {
        assert.ok(
          Math.abs(samples.data[i] / 257 - value) < 0.5,
          `${COLOURS[i]}: ${samples.data[i] / 257}, not ${value}`,
        );
      });
    });
    it('gives the inks of a profiled picture the same lightness (0.5 at most, 0.1 on average)', async () => {
      const icc = need('/usr/share/color/icc/ghostscript/default_cmyk.icc', 'libgs-common');
      const mixes = COLOURS.map(([c, m, y], i) => [c, m, y, i % 3 === 0 ? 0 : (i * 53) % 200]);
      tiff('inks.tif', rowOf('cmyk', 4, Uint8Array.from(mixes.flat())), fs.readFileSync(icc));
      const ours = await converted(inFolder('inks.tif'), { bits: 16 });
      const stored = mixes.map(mix => mix.map(v => (v / 255) * 100));
      const errors = transicc(['-i', icc, '-o', '*Lab4'], stored).map(([L], i) => Math.abs(L - ours[i]));
      assert.ok(Math.max(...errors) < 0.5, `${Math.max(...errors)}`);
      assert.ok(errors.reduce((a, b) => a + b) / errors.length < 0.1);
    });
  });

  it('exiftool reads the profiles that are embedded', async () => {
    const file = await pixels('colours.png', COLOURS);
    const tags = async (wish: Partial<RemedyWish>) => {
      const result = inFolder('tagged.tif');
      await remedyPicture(file, result, wishFor({ ...wish, format: 'tiff' }));
      const out = execFileSync(
        need('/usr/bin/exiftool', 'libimage-exiftool-perl'),
        ['-j', '-G1', '-ICC_Profile:all', '-validate', result],
        { encoding: 'utf8' },
      );
      return JSON.parse(out)[0];
    };
    const rgb = await tags({});
    assert.equal(rgb['ICC_Profile:ProfileDescription'], 'sRGB');
    assert.equal(rgb['ICC-header:ColorSpaceData'], 'RGB ');
    assert.equal(rgb['ICC-header:ProfileVersion'], '2.4.0');
    const grey = await tags({ to: 'single-channel' });
    assert.equal(grey['ICC_Profile:ProfileDescription'], 'Grey, tone curve of sRGB');
    assert.equal(grey['ICC-header:ColorSpaceData'], 'GRAY');
    const inks = await tags({ to: 'black-only' });
    assert.equal(inks['ICC_Profile:ProfileDescription'], undefined);
  });

  describe('inks beside the measured data that they are read by (ANSI/CGATS TR 006)', () => {
    const table = parseCgats(pressDataText('TR006'));
    const field = (name: string) => [...column(table, name)];
    const [c, m, y, k] = ['CMYK_C', 'CMYK_M', 'CMYK_Y', 'CMYK_K'].map(field);
    const [L, a, b] = ['LAB_L', 'LAB_A', 'LAB_B'].map(field);
    const paper = c.findIndex((_, i) => c[i] + m[i] + y[i] + k[i] === 0);
    /** L* relative to the paper. */
    const measured = L.map(value => lightness((100 * luminance(value)) / luminance(L[paper])));

    /** Rows whose inks fit -> errors of L*, in 16 bits so that no patch is rounded. */
    function errorsOf(fits: (i: number) => boolean): number[] {
      const rows = c.map((_, i) => i).filter(fits);
      const data = Uint16Array.from(
        rows.flatMap(i => [c[i], m[i], y[i], k[i]]),
        v => Math.round(v * 655.35),
      );
      const samples: Samples = {
        width: rows.length,
        height: 1,
        channels: 4,
        alpha: false,
        space: 'cmyk',
        data,
      };
      const { index, lightness } = greyPlane(samples, pressMeaning(), LIGHTNESS);
      return rows.map((i, at) => Math.abs(lightness[index[at]] - measured[i]));
    }
    const mean = (errors: number[]) => errors.reduce((x, y) => x + y) / errors.length;
    const isGrey = (i: number) => Math.hypot(a[i] - a[paper], b[i] - b[paper]) < 8;
    // patches that the interpolation does not meet exactly are those that it was not made from
    const xyz = new Float64Array(3);
    const isKeptOut = (i: number) => {
      measuredPress('TR006').xyz([c[i] / 100, m[i] / 100, y[i] / 100, k[i] / 100], xyz);
      return Math.abs(lightness(xyz[1]) - L[i]) > 1e-6;
    };

    const cases: [
      name: string,
      fits: (i: number) => boolean,
      least: number,
      most: number,
      average: number,
    ][] = [
      ['black ink alone', i => c[i] + m[i] + y[i] === 0 && k[i] > 0, 10, 0.15, 0.05],
      ['greys of three inks', i => k[i] === 0 && Math.min(c[i], m[i], y[i]) > 0 && isGrey(i), 20, 0.8, 0.25],
      ['greys of four inks', i => k[i] > 0 && Math.min(c[i], m[i], y[i]) > 0 && isGrey(i), 50, 0.8, 0.25],
      ['greys that the interpolation has not seen', i => isGrey(i) && isKeptOut(i), 10, 0.8, 0.25],
      ['all that the interpolation has not seen', isKeptOut, 100, 1, 0.25],
    ];
    for (const [name, fits, least, most, average] of cases)
      it(name, function () {
        const errors = errorsOf(fits);
        const largest = Math.max(...errors);
        this.test!.title +=
          `: ${errors.length} patches, L* off by ${mean(errors).toFixed(3)} on average, ${largest.toFixed(2)} at most`;
        assert.ok(errors.length >= least, `only ${errors.length} patches`);
        assert.ok(largest < most && mean(errors) < average);
      });
  });
});

import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { readHeader } from '../../src/picture/header';
import { openPicture } from '../../src/picture/open';
import { LONGEST_EDGE, rasterOf } from '../../src/picture/raster';
import { plainTiff } from '../../src/picture/raster-tiff';
import type { Header } from '../../src/picture/types';
import type { Raster } from '../../src/shared/reader-protocol';
import { known } from './known';

const file = (name: string) => path.join('test/picture/known', name);
const show = (name: string, page = 1, edge = 500) => rasterOf({ file: file(name) }, page, edge);

/** The shown pixels as RGB, whatever the PNG holds. */
async function pixels(raster: Raster): Promise<{ at(x: number, y: number): number[] }> {
  const { data, info } = await sharp(raster.png)
    .removeAlpha()
    .toColourspace('srgb')
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { at: (x, y) => [...data.subarray((y * info.width + x) * 3, (y * info.width + x) * 3 + 3)] };
}

describe('rasterOf', () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'raster-'));
  after(() => fs.rmSync(folder, { recursive: true }));

  it('shows every picture of known values, upright', async () => {
    for (const { file: name, page, width, height, orientation = 1 } of known) {
      const raster = await show(name, page);
      assert.deepEqual(
        [raster.fullWidth, raster.fullHeight, raster.orientation],
        [width, height, orientation],
        name,
      );
      const shown = orientation > 4 ? [height, width] : [width, height];
      assert.deepEqual([raster.width, raster.height], shown, name);
      assert.equal((await sharp(raster.png).metadata()).format, 'png', name);
    }
  });

  it('turns the picture: its stored top left is at the top right', async () => {
    // orientation 6 is "row 0 is the right-hand side, column 0 the top" (EXIF 2.32, Orientation)
    const shown = await pixels(await show('turned.tif'));
    const stored = known.find(k => k.file === 'turned.tif')!;
    assert.equal(shown.at(11, 0)[0], stored.value(0, 0, 0));
    assert.equal(shown.at(0, 19)[0], stored.value(19, 11, 0));
  });

  it('shows each layout as it is meant', async () => {
    for (const name of [
      'rgb8.tif',
      'palette8.tif',
      'palette8-grey.tif',
      'rgb8-extra.tif',
      'grey8-white0.tif',
      'grey8-extra.tif',
    ]) {
      const stored = known.find(k => k.file === name)!;
      const shown = await pixels(await show(name));
      for (const [x, y] of [
        [0, 0],
        [7, 3],
        [19, 11],
      ])
        assert.deepEqual(
          shown.at(x, y),
          [0, 1, 2].map(c => stored.value(x, y, stored.channels === 1 ? 0 : c)),
          `${name} ${x},${y}`,
        );
    }
  });

  it('shows floats and 16 bits like their eight-bit sister', async () => {
    for (const name of ['grey-float.tif', 'rgb-float.tif', 'rgb16.tif', 'grey-float-white0.tif']) {
      const stored = known.find(k => k.file === name)!;
      const full = stored.bits === 32 ? 1 : 65535;
      const [shown] = (await pixels(await show(name))).at(7, 3);
      assert.ok(Math.abs(shown - (stored.value(7, 3, 0) / full) * 255) <= 1, `${name}: ${shown}`);
    }
  });

  it('shows inks of 16 bits like their eight-bit sister', async () => {
    const words = known.find(k => k.file === 'cmyk16.tif')!;
    const { width, height } = words;
    const data = Uint8Array.from({ length: width * height * 4 }, (_, i) => {
      const [point, ink] = [Math.floor(i / 4), i % 4];
      return Math.round(words.value(point % width, Math.floor(point / width), ink) / 257);
    });
    const opened = openPicture({ file: file('cmyk16.tif'), sha256: '' });
    const header = readHeader(opened.source, 1);
    opened.close();
    const bytes = path.join(folder, 'cmyk8.tif');
    fs.writeFileSync(
      bytes,
      plainTiff({ width, height, channels: 4, alpha: false, space: 'cmyk', data }, header),
    );
    const [shown, like] = [await show('cmyk16.tif'), await rasterOf({ file: bytes }, 1, 500)];
    const [x, y] = [await pixels(shown), await pixels(like)];
    const apart = [1, 7, 19].flatMap(at => x.at(at, 3).map((value, c) => Math.abs(value - y.at(at, 3)[c])));
    assert.ok(Math.max(...apart) <= 1, `${apart}`);
  });

  it('shows inks the same whichever way a JPEG stores them', async () => {
    const [marked, unmarked, tiff] = await Promise.all(
      ['cmyk-adobe.jpg', 'cmyk-unmarked.jpg', 'cmyk8-jpeg.tif'].map(async name => pixels(await show(name))),
    );
    for (const [x, y] of [
      [2, 2],
      [10, 2],
      [18, 2],
      [20, 12],
    ]) {
      assert.deepEqual(unmarked.at(x, y), marked.at(x, y));
      assert.deepEqual(tiff.at(x, y), marked.at(x, y));
    }
    assert.ok(
      marked.at(2, 2).every(v => v > 250),
      'no ink is paper',
    );
    assert.ok(
      marked.at(10, 2).every(v => v < 80),
      'black ink is dark',
    );
  });

  it('shows black ink alone as grey', async () => {
    const at = (await pixels(await show('cmyk-adobe.jpg'))).at(10, 2);
    assert.ok(Math.max(...at) - Math.min(...at) <= 4, `${at}`);
  });

  it('lays what is transparent on paper white, as it is judged', async () => {
    // a grey of 100 and black ink alone, half covered
    const grey = path.join(folder, 'half.png');
    const data = Uint8Array.from({ length: 64 * 2 }, (_, i) => (i % 2 ? 128 : 100));
    await sharp(data, { raw: { width: 8, height: 8, channels: 2 } })
      .png()
      .toFile(grey);
    const inks = path.join(folder, 'half.tif');
    const black = (alpha: number) =>
      Uint8Array.from({ length: 64 * 5 }, (_, i) => [0, 0, 0, 255, alpha][i % 5]);
    const shownOf = async (alpha: number) => {
      const samples = {
        width: 8,
        height: 8,
        channels: 4,
        alpha: true,
        space: 'cmyk',
        data: black(alpha),
      } as const;
      fs.writeFileSync(inks, plainTiff(samples, { orientation: 1, icc: null } as Header));
      return sharp((await rasterOf({ file: inks }, 1, 500)).png);
    };
    const onPaper = (value: number) => Math.round((value * 128 + 255 * 127) / 255);
    const shown = sharp((await rasterOf({ file: grey }, 1, 500)).png);
    assert.equal((await shown.metadata()).hasAlpha, false);
    assert.ok(Math.abs((await shown.raw().toBuffer())[0] - onPaper(100)) <= 1);
    const [full] = await (await shownOf(255)).raw().toBuffer();
    const [half] = await (await shownOf(128)).raw().toBuffer();
    assert.ok(Math.abs(half - onPaper(full)) <= 1, `${half} of ${full}`);
  });

  it('shows Lab as colour, in every way it is stored', async () => {
    for (const name of ['lab8.tif', 'lab16.tif', 'icclab8.tif', 'icclab16.tif']) {
      const shown = await pixels(await show(name));
      const stored = known.find(k => k.file === name)!;
      // the first pixel has L* 0
      if (name.startsWith('lab')) assert.deepEqual(shown.at(0, 0), [0, 0, 0], name);
      assert.ok(stored.value(0, 0, 0) === 0);
    }
  });

  it('shows the page that was asked for', async () => {
    assert.equal((await show('pages.tif', 2)).fullWidth, 8);
    await assert.rejects(show('pages.tif', 3), /no page 3/);
    await assert.rejects(show('pages.tif', 9), /no page 9/);
  });

  it('shrinks to the edge that was asked for, never beyond the largest, and never enlarges', async () => {
    const large = path.join(folder, 'large.jpg');
    await sharp({ create: { width: 3000, height: 1500, channels: 3, background: '#808080' } })
      .jpeg()
      .toFile(large);
    const of = async (edge: number) => {
      const { width, height } = await rasterOf({ file: large }, 1, edge);
      return [width, height];
    };
    assert.deepEqual(await of(600), [600, 300]);
    assert.deepEqual(await of(1e6), [LONGEST_EDGE, LONGEST_EDGE / 2]);
    assert.deepEqual(await of(0), [1, 1]);
    const small = await show('grey.jpg');
    assert.deepEqual([small.width, small.height], [32, 16]);
  });

  it('goes through the picture\u2019s own profile', async () => {
    const tagged = path.join(folder, 'p3.png');
    // half red of a wider space is outside or near the edge of sRGB: more red, no green, no blue
    await sharp({ create: { width: 8, height: 8, channels: 3, background: { r: 128, g: 0, b: 0 } } })
      .withIccProfile('p3', { attach: true })
      .png()
      .toFile(tagged);
    const stored = await sharp(tagged, { ignoreIcc: true }).raw().toBuffer();
    const shown = (await pixels(await rasterOf({ file: tagged }, 1, 8))).at(3, 3);
    assert.ok(Math.abs(shown[0] - 128) <= 1 && shown[1] === 0, `${shown}`);
    assert.notEqual(stored[0], shown[0]);
  });

  it('says why it shows nothing', async () => {
    await assert.rejects(show('picture.heic'), { reason: 'format' });
    await assert.rejects(show('nothing-here.png'), { reason: 'missing' });
    const cut = path.join(folder, 'cut.jpg');
    const whole = await sharp({ create: { width: 400, height: 400, channels: 3, background: '#808080' } })
      .jpeg()
      .toBuffer();
    fs.writeFileSync(cut, whole.subarray(0, whole.length - 300));
    await assert.rejects(rasterOf({ file: cut }, 1, 100), {
      reason: 'truncated',
      message: /^The file ends before/,
    });
  });
});

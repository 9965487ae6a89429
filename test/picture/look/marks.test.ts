import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { openPage } from '../../../src/picture/look/kept';
import { marksOf } from '../../../src/picture/look/marks';
import { plainTiff } from '../../../src/picture/raster-tiff';
import { readFacts } from '../../../src/picture/read';
import type { Header } from '../../../src/picture/types';
import { MARK, TRANSPARENT } from '../../../src/shared/look';

const [W, H] = [320, 160];

/** Grey, darker to the right; white at the lower left; a red stamp at the upper right. */
function picture() {
  const data = Buffer.alloc(W * H * 3);
  for (let y = 0; y < H; y++)
    for (let x = 0; x < W; x++) {
      const grey = x < 80 && y >= 80 ? 255 : 200 - Math.floor(x / 2);
      const stamp = x >= 240 && x < 280 && y >= 16 && y < 48;
      data.set(stamp ? [grey + 60, grey, grey] : [grey, grey, grey], (y * W + x) * 3);
    }
  return sharp(data, { raw: { width: W, height: H, channels: 3 } });
}

describe('what can be marked on a picture', () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'marks-'));
  const at = (name: string) => path.join(folder, name);
  const marked = async (name: string, edge: number) => marksOf(await openPage(at(name), 1), edge);
  after(() => fs.rmSync(folder, { recursive: true }));

  it('is left-over colour and cut-off lights where they are, of the shares that the facts tell', async () => {
    await picture().png().toFile(at('grey.png'));
    const { width, height, kinds, shares, ink } = await marked('grey.png', 160);
    assert.deepEqual([width, height, ink], [160, 80, null]);
    const [facts] = await readFacts({ file: at('grey.png') });
    assert.equal(shares.colour.toFixed(6), facts.chroma!.share.toFixed(6));
    assert.equal(shares.lights.toFixed(6), facts.tone!.clipped!.lights.toFixed(6));
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++) {
        const expected =
          (x >= 120 && x < 140 && y >= 8 && y < 24 ? MARK.colour : 0) | (x < 40 && y >= 40 ? MARK.lights : 0);
        assert.equal(kinds[y * width + x], expected, `${x}, ${y}`);
      }
  });

  it('tells the mean lightness of each cell', async () => {
    await picture().png().toFile(at('grey.png'));
    const { lightness, width } = await marked('grey.png', 160);
    // sRGB (IEC 61966-2-1) and CIE 15:2018, 8.2.1, by hand
    const L = (v: number) => {
      const c = v / 255;
      const Y = c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
      return Y > 216 / 24389 ? 116 * Math.cbrt(Y) - 16 : (Y * 24389) / 27;
    };
    for (const x of [0, 50, 100]) {
      const value = lightness[30 * width + x] / 100;
      assert.ok(Math.abs(value - L(200 - x)) < 0.05, `${x}: ${value}, ${L(200 - x)}`);
    }
  });

  it('lies as the picture is seen', async () => {
    // orientation 6: the first column is the top, the first row the right-hand side (EXIF 2.32)
    await picture().withMetadata({ orientation: 6 }).png().toFile(at('turned.png'));
    const { width, height, kinds } = await marked('turned.png', 160);
    assert.deepEqual([width, height], [80, 160]);
    assert.equal(kinds[5 * width + 5], MARK.lights);
    assert.equal(kinds[130 * width + 80 - 16], MARK.colour);
    assert.equal(kinds[130 * width + 16], 0);
  });

  it('counts ink totals pixel by pixel', async () => {
    const data = Buffer.alloc(64 * 64 * 4);
    for (let i = 0; i < 64 * 64; i++) data.set(i % 64 < 16 ? [255, 255, 128, 255] : [51, 51, 0, 0], i * 4);
    const samples = { width: 64, height: 64, channels: 4, alpha: false, space: 'cmyk', data } as const;
    fs.writeFileSync(at('inks.tif'), plainTiff(samples, { orientation: 1, icc: null } as Header));
    const { ink, shares } = await marked('inks.tif', 64);
    const [first, last] = [ink![0], ink![63]];
    const [facts] = await readFacts({ file: at('inks.tif') });
    assert.equal(first, Math.ceil(facts.ink!.maxTotal - 0.001));
    assert.ok(last < first);
    const above = shares.ink!.reduce((sum, share, total) => (total > 300 ? sum + share : sum), 0);
    assert.equal(above, 0.25);
  });

  it('leaves out what is transparent', async () => {
    const data = Buffer.alloc(16 * 16 * 4, 128);
    for (let i = 0; i < 16 * 16; i++) data[i * 4 + 3] = i % 16 < 8 ? 0 : 255;
    await sharp(data, { raw: { width: 16, height: 16, channels: 4 } })
      .png()
      .toFile(at('glass.png'));
    const { lightness } = await marked('glass.png', 16);
    assert.equal(lightness[0], TRANSPARENT);
    assert.ok(lightness[15] < 10_000);
  });
});

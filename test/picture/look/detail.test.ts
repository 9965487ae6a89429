import assert from 'node:assert/strict';
import path from 'node:path';
import sharp from 'sharp';
import { detailOf } from '../../../src/picture/look/detail';
import { openPage } from '../../../src/picture/look/kept';
import { rasterOf } from '../../../src/picture/raster';
import { known } from '../known';

const shown = async (png: Uint8Array) =>
  sharp(png).removeAlpha().toColourspace('srgb').raw().toBuffer({ resolveWithObject: true });

describe('a part of a picture, at full resolution', () => {
  it('shows the same as the picture shown whole, in every layout', async () => {
    for (const { file, page = 1 } of known) {
      const at = path.join('test/picture/known', file);
      const whole = await shown((await rasterOf({ file: at }, page, 500)).png);
      const box = { x: 3, y: 2, width: 5, height: 4 };
      const detail = await detailOf(await openPage(at, page), box, 500);
      assert.deepEqual(detail.box, box, file);
      const part = await shown(detail.png);
      assert.deepEqual([part.info.width, part.info.height], [5, 4], file);
      for (let y = 0; y < 4; y++)
        for (let x = 0; x < 5; x++)
          for (let c = 0; c < 3; c++) {
            const own = part.data[(y * 5 + x) * 3 + c];
            const there = whole.data[((y + 2) * whole.info.width + x + 3) * 3 + c];
            assert.ok(Math.abs(own - there) <= 1, `${file} ${x}, ${y}: ${own}, ${there}`);
          }
    }
  });

  it('is no larger than was asked for, and no larger than the picture', async () => {
    const page = await openPage('test/picture/known/rgb8.tif', 1);
    const { box, png } = await detailOf(page, { x: -5, y: -5, width: 100, height: 100 }, 10);
    assert.deepEqual(box, { x: 0, y: 0, width: 20, height: 12 });
    assert.equal((await sharp(png).metadata()).width, 10);
  });
});

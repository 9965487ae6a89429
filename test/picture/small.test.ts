import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { smallPictures } from '../../src/picture/small';

describe('smallPictures', () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'small-'));
  after(() => fs.rmSync(folder, { recursive: true }));

  const grey = (channels: 3 | 4) =>
    sharp({
      create: { width: 900, height: 300, channels, background: { r: 90, g: 90, b: 90, alpha: 0.5 } },
    });

  it('gives each size that is asked for, never enlarged, with the full size told', async () => {
    const file = path.join(folder, 'opaque.tif');
    await grey(3).tiff().toFile(file);
    const sizes = await smallPictures(file, 1, [1200, 300]);
    const found = await Promise.all(
      sizes.map(async ({ type, bytes, fullWidth, fullHeight }) => {
        const { format, width, height } = await sharp(bytes).metadata();
        return { type, format, width, height, fullWidth, fullHeight };
      }),
    );
    const same = { type: 'image/jpeg', format: 'jpeg', fullWidth: 900, fullHeight: 300 };
    assert.deepEqual(found, [
      { ...same, width: 900, height: 300 },
      { ...same, width: 300, height: 100 },
    ]);
  });

  it('lays what is seen through on paper white', async () => {
    const file = path.join(folder, 'clear.png');
    await grey(4).png().toFile(file);
    const [{ type, bytes }] = await smallPictures(file, 1, [300]);
    const { data, info } = await sharp(bytes).raw().toBuffer({ resolveWithObject: true });
    assert.deepEqual([type, info.channels], ['image/jpeg', 3]);
    // half of 90 and half of 255
    assert.ok(Math.abs(data[0] - 172) <= 2, String(data[0]));
  });

  it('says what cannot be read', async () => {
    const file = path.join(folder, 'no.tif');
    fs.writeFileSync(file, 'II*\0');
    await assert.rejects(smallPictures(file, 1, [300]), { name: 'UnreadableError' });
  });
});

import assert from 'node:assert/strict';
import path from 'node:path';
import { openPage } from '../../../src/picture/look/kept';
import { readPixel } from '../../../src/picture/look/pixel';
import { seenSize, storedPoint } from '../../../src/picture/look/upright';
import { known } from '../known';

const open = (name: string, page = 1) => openPage(path.join('test/picture/known', name), page);

describe('reading one pixel', () => {
  it('tells the stored values of every picture of known values, at every place, as it is seen', async () => {
    let read = 0;
    for (const { file, page = 1, value, within = 0, space, width, height, orientation = 1, bits } of known) {
      const opened = await open(file, page);
      const stored = { width, height, orientation };
      const size = seenSize(stored);
      for (let y = 0; y < size.height; y++)
        for (let x = 0; x < size.width; x++) {
          const { channels, full } = readPixel(opened, x, y);
          // floating point and Lab are told in their own units
          if (full === null) continue;
          assert.equal(full, 2 ** bits - 1, file);
          const [column, row] = storedPoint(x, y, stored);
          for (const [c, channel] of channels.entries()) {
            read++;
            const off = Math.abs(channel.value - value(column, row, c));
            assert.ok(off <= within, `${file} ${x}, ${y}: ${channel.name} ${channel.value}, off by ${off}`);
          }
        }
      assert.ok(
        space !== 'cmyk' ||
          readPixel(opened, 0, 0)
            .channels.map(c => c.name)
            .join('') === 'CMYK',
      );
    }
    assert.ok(read > 10_000);
  });

  it('says what the values mean in CIELAB, and their chroma', async () => {
    const { lab } = readPixel(await open('rgb-neutral.jpg'), 0, 8);
    const { value } = known.find(k => k.file === 'rgb-neutral.jpg')!;
    // sRGB (IEC 61966-2-1) and CIE 15:2018, 8.2.1, by hand
    const v = value(0, 8, 0) / 255;
    const Y = v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
    const L = Y > 216 / 24389 ? 116 * Math.cbrt(Y) - 16 : (Y * 24389) / 27;
    assert.ok(Math.abs(lab!.L - L) < 0.05, `${lab!.L}, ${L}`);
    assert.ok(lab!.chroma < 0.05);
  });

  it('tells how opaque a pixel is, and no colour where nothing is seen', async () => {
    const file = 'rgb-alpha8.png';
    const { value, channels } = known.find(k => k.file === file)!;
    const opened = await open(file);
    const first = readPixel(opened, 0, 0);
    assert.equal(value(0, 0, channels), 0);
    assert.deepEqual([first.alpha, first.lab], [0, null]);
    assert.equal(readPixel(opened, 3, 2).alpha, value(3, 2, channels) / 255);
  });

  it('takes the nearest pixel where the place lies outside', async () => {
    const { x, y } = readPixel(await open('grey8.png'), -4, 1e6);
    assert.deepEqual([x, y], [0, 11]);
  });
});

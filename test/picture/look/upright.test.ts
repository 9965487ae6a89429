import assert from 'node:assert/strict';
import sharp from 'sharp';
import { seenSize, storedBox, storedPoint, within } from '../../../src/picture/look/upright';

const [width, height] = [4, 3];
const pixels = Buffer.from(Array.from({ length: width * height }, (_, i) => 20 * i));

/** The picture turned by the decoder's own reading of the EXIF orientation, an implementation that is not ours. */
async function turned(orientation: number) {
  const png = await sharp(pixels, { raw: { width, height, channels: 1 } })
    .withMetadata({ orientation })
    .png()
    .toBuffer();
  return sharp(png).autoOrient().extractChannel(0).raw().toBuffer({ resolveWithObject: true });
}

describe('places in a picture that is turned', () => {
  for (let orientation = 1; orientation <= 8; orientation++)
    it(`finds where what is seen by orientation ${orientation} is stored`, async () => {
      const stored = { width, height, orientation };
      const { data, info } = await turned(orientation);
      assert.deepEqual(seenSize(stored), { width: info.width, height: info.height });
      for (let y = 0; y < info.height; y++)
        for (let x = 0; x < info.width; x++) {
          const [column, row] = storedPoint(x, y, stored);
          assert.equal(pixels[row * width + column], data[y * info.width + x], `${x}, ${y}`);
        }
      const box = storedBox({ x: 0, y: 1, width: 2, height: 2 }, stored);
      const inside = new Set<number>();
      for (let y = box.y; y < box.y + box.height; y++)
        for (let x = box.x; x < box.x + box.width; x++) inside.add(pixels[y * width + x]);
      const wanted = [0, 1].flatMap(x => [1, 2].map(y => data[y * info.width + x]));
      assert.deepEqual(inside, new Set(wanted));
    });

  it('keeps a box within the picture, and at least one pixel of it', () => {
    const size = { width: 10, height: 8 };
    assert.deepEqual(within({ x: -3, y: 2.5, width: 5, height: 100 }, size), {
      x: 0,
      y: 2,
      width: 2,
      height: 6,
    });
    assert.deepEqual(within({ x: 50, y: 50, width: 1, height: 1 }, size), {
      x: 9,
      y: 7,
      width: 1,
      height: 1,
    });
  });
});

import assert from 'node:assert/strict';
import sharp from 'sharp';
import { smallOrders } from '../../../src/report/chart/small-orders';

describe('possible orders where there is little room', () => {
  const own = ['#ffffff', '#808080', '#000000'];
  const orders = [
    ['#fefefe', '#858080', '#202020'],
    ['#fdfdfd', '#808085', '#212121'],
  ];

  it('show the file’s greys from paper to black, and below them every order, as an independent renderer reads it', async () => {
    const { svg, width, height } = smallOrders(own, orders);
    const image = sharp(Buffer.from(svg)).removeAlpha();
    const { data, info } = await image.raw().toBuffer({ resolveWithObject: true });
    assert.deepEqual([info.width, info.height], [width, height]);
    const colourAt = (column: number, y: number) => {
      const at = (y * width + Math.round(((column + 0.5) * width) / 3)) * info.channels;
      return `#${data.subarray(at, at + 3).toString('hex')}`;
    };
    const columns = [0, 1, 2];
    assert.deepEqual(
      columns.map(column => colourAt(column, 4)),
      own,
    );
    assert.deepEqual(
      orders.map((_, i) => columns.map(column => colourAt(column, height - 6 * (orders.length - i) + 3))),
      orders,
    );
  });

  it('leave no gap between greys, nor between orders', async () => {
    const grey = Array.from({ length: 26 }, () => '#404040');
    const { svg, width, height } = smallOrders(grey, [grey, grey]);
    const { data } = await sharp(Buffer.from(svg)).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
    for (let y = height - 12; y < height; y++)
      for (let x = 0; x < width; x++)
        assert.equal(data.readUInt32BE((y * width + x) * 4), 0x404040ff, `${x}, ${y}`);
  });
});

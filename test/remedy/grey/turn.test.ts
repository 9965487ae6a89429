import assert from 'node:assert/strict';
import { sharp } from '../../../src/picture/decode-sharp';
import type { TonePlane } from '../../../src/remedy/grey/plane';
import { upright } from '../../../src/remedy/grey/turn';

const WIDTH = 5;
const HEIGHT = 3;
const index = Uint8Array.from({ length: WIDTH * HEIGHT }, (_, i) => i * 10);
const plane: TonePlane = {
  width: WIDTH,
  height: HEIGHT,
  index,
  lightness: new Float32Array(256),
  alpha: index.map(v => v + 1),
  tint: null,
  colour: Int16Array.from({ length: index.length * 2 }, (_, i) => (i % 2 ? -index[i >> 1] : index[i >> 1])),
};

describe('turned upright', () => {
  for (let orientation = 1; orientation <= 8; orientation++)
    it(`as the image library turns orientation ${orientation}`, async () => {
      const tagged = await sharp(index, { raw: { width: WIDTH, height: HEIGHT, channels: 1 } })
        .png()
        .withMetadata({ orientation })
        .toBuffer();
      const { data, info } = await sharp(tagged)
        .autoOrient()
        .toColourspace('b-w')
        .raw()
        .toBuffer({ resolveWithObject: true });
      const turned = upright(plane, orientation);
      assert.deepEqual([turned.width, turned.height], [info.width, info.height]);
      assert.deepEqual([...turned.index], [...data]);
      assert.deepEqual(
        [...turned.alpha!],
        [...data].map(v => v + 1),
      );
      assert.deepEqual(
        [...turned.colour!],
        [...data].flatMap(v => [v, 0 - v]),
      );
    });
});

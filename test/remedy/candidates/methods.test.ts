import assert from 'node:assert/strict';
import path from 'node:path';
import { sharp } from '../../../src/picture/decode-sharp';
import { methodPictures } from '../../../src/remedy/candidates/methods';
import { greyMethods } from '../../../src/remedy/grey/methods';
import { temporaryFolder } from '../../book/support/folder';

/** Left half sky, right half leaves. */
async function landscape(): Promise<string> {
  const half = (background: string) => ({
    create: { width: 40, height: 40, channels: 3 as const, background },
  });
  const file = path.join(temporaryFolder({}), 'landscape.png');
  await sharp({ create: { width: 80, height: 40, channels: 3, background: '#000' } })
    .composite([
      { input: half('#5f8fd8'), left: 0, top: 0 },
      { input: half('#4f8a3c'), left: 40, top: 0 },
    ])
    .png()
    .toFile(file);
  return file;
}

describe('the ways to grey, shown together', () => {
  it('are grey, of one size, and do to sky and leaves what their names say', async () => {
    const { asItIs, grey, width, height } = await methodPictures(await landscape(), greyMethods, 40);
    assert.deepEqual([width, height], [40, 20]);
    assert.deepEqual(
      grey.map(({ id }) => id),
      greyMethods.map(({ id }) => id),
    );
    const tones = new Map<string, [sky: number, leaves: number]>();
    for (const { id, png } of grey) {
      const { data, info } = await sharp(Buffer.from(png)).raw().toBuffer({ resolveWithObject: true });
      assert.deepEqual([info.width, info.height], [40, 20]);
      const at = (x: number) => data[(10 * 40 + x) * info.channels];
      assert.ok(info.channels < 3 || data[0] === data[2], `${id} is grey`);
      tones.set(id, [at(10), at(30)]);
    }
    const [sky, leaves] = tones.get('lightness')!;
    assert.ok(tones.get('darker-sky')![0] < sky - 5 && tones.get('lighter-sky')![0] > sky + 5);
    assert.ok(tones.get('darker-foliage')![1] < leaves - 3 && tones.get('lighter-foliage')![1] > leaves + 3);
    const { channels } = await sharp(Buffer.from(asItIs)).stats();
    assert.ok(Math.abs(channels[0].mean - channels[2].mean) > 20, 'the picture itself keeps its colour');
  });
});

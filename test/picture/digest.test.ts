import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import sharp from 'sharp';
import { pixelDigests } from '../../src/picture/digest';

describe('names of pixels', () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'digest-'));
  after(() => fs.rmSync(folder, { recursive: true }));
  const at = (name: string) => path.join(folder, name);
  const grey = Buffer.from(Uint8Array.from({ length: 60 * 40 }, (_, i) => (i * 7919) % 251));
  const picture = () => sharp(grey, { raw: { width: 60, height: 40, channels: 1 } }).toColourspace('b-w');
  const digestOf = async (name: string) => (await pixelDigests({ file: at(name) }))[0];

  before(async () => {
    await picture().png().toFile(at('a.png'));
    await picture().png({ compressionLevel: 0, progressive: true }).toFile(at('packed.png'));
    await picture().tiff({ compression: 'lzw' }).toFile(at('a.tif'));
    await picture().flop().png().toFile(at('mirrored.png'));
    const three = Buffer.from([...grey].flatMap(value => [value, value, value]));
    await sharp(three, { raw: { width: 60, height: 40, channels: 3 } })
      .png()
      .toFile(at('rgb.png'));
    await picture().jpeg({ quality: 90 }).toFile(at('a.jpg'));
    await picture()
      .jpeg({ quality: 90 })
      .withExif({ IFD0: { Copyright: 'somebody' } })
      .toFile(at('told.jpg'));
    await picture().jpeg({ quality: 60 }).toFile(at('less.jpg'));
  });

  it('are the same however the pixels are packed, and whatever is said of them', async () => {
    const name = await digestOf('a.png');
    assert.match(name!, /^[0-9a-f]{64}$/);
    for (const same of ['packed.png', 'a.tif']) assert.equal(await digestOf(same), name, same);
    assert.equal(await digestOf('told.jpg'), await digestOf('a.jpg'));
  });

  it('are others for other pixels, in other places or channels too', async () => {
    const others = ['a.png', 'mirrored.png', 'rgb.png', 'a.jpg', 'less.jpg'];
    assert.equal(new Set(await Promise.all(others.map(digestOf))).size, others.length);
  });

  it('tell once how large the task is: of all pages', async () => {
    const pages = Buffer.concat([grey, grey, grey]);
    await sharp(pages, { raw: { width: 60, height: 120, channels: 1, pageHeight: 40 } })
      .toColourspace('b-w')
      .tiff()
      .toFile(at('pages.tif'));
    const told: number[] = [];
    const digests = await pixelDigests({ file: at('pages.tif') }, (_, megapixels) => told.push(megapixels));
    assert.equal(new Set(digests).size, 1);
    assert.deepEqual([digests.length, told.at(-1), told.filter(Boolean).length], [3, 7200 / 1e6, 1]);
  });

  it('are none for a page that cannot be read', async () => {
    fs.writeFileSync(at('short.jpg'), fs.readFileSync(at('a.jpg')).subarray(0, 500));
    assert.deepEqual(await pixelDigests({ file: at('short.jpg') }), [null]);
    await assert.rejects(pixelDigests({ file: at('nothing-here') }), { reason: 'missing' });
  });
});

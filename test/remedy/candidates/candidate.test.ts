import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { sharp } from '../../../src/picture/decode-sharp';
import { readFacts } from '../../../src/picture/read';
import { candidateOf } from '../../../src/remedy/candidates/candidate';
import { remedyPicture } from '../../../src/remedy/picture';
import type { RemedyEncoding } from '../../../src/shared/remedy';
import { temporaryFolder } from '../../book/support/folder';
import { wishFor } from '../support';

const known = (name: string) => path.join('test/picture/known', name);
const LAYOUTS = ['palette.gif', 'cmyk8.tif', 'grey16.tif'].filter(name => fs.existsSync(known(name)));

describe('a candidate', () => {
  it('is what the conversion then writes: the same encoding, tones and departure, and no file', async () => {
    assert.ok(LAYOUTS.length > 0);
    for (const name of LAYOUTS)
      for (const to of ['rgb-neutral', 'single-channel', 'black-only'] as RemedyEncoding[]) {
        const folder = temporaryFolder({});
        const picture = path.join(folder, name);
        fs.copyFileSync(known(name), picture);
        const wish = wishFor({ to, format: 'tiff' });
        const { facts, maxError, meanError, moved, told } = await candidateOf(picture, wish, 100);
        assert.deepEqual(fs.readdirSync(folder), [name]);
        const written = path.join(folder, 'written.tmp');
        const result = await remedyPicture(picture, written, wish);
        const [read] = await readFacts({ file: written });
        assert.deepEqual(facts, { ...read, sha256: '' }, `${name} to ${to}`);
        assert.deepEqual([maxError, meanError], [result.proof.maxError, result.proof.meanError]);
        assert.deepEqual(told, result.told);
        assert.deepEqual(moved, result.moved);
      }
  });

  it('is shown upright and no larger than is asked', async () => {
    const folder = temporaryFolder({});
    const picture = path.join(folder, 'lying.jpg');
    const plain = { width: 60, height: 40, channels: 3, background: '#204080' } as const;
    await sharp({ create: plain }).withMetadata({ orientation: 6 }).jpeg().toFile(picture);
    const { raster } = await candidateOf(picture, wishFor(), 30);
    assert.deepEqual([raster.width, raster.height], [20, 30]);
    const { channels } = await sharp(Buffer.from(raster.png)).stats();
    assert.equal(channels[0].mean, channels[2].mean);
  });

  it('is refused as the conversion is', async () => {
    const folder = temporaryFolder({ 'b.tif': 'no picture' });
    await assert.rejects(candidateOf(path.join(folder, 'b.tif'), wishFor(), 30), { name: 'RemedyError' });
  });
});

import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import sharp from 'sharp';
import { remedyPicture } from '../../src/remedy/picture';
import { unkept } from '../../src/remedy/unkept';
import { temporaryFolder } from '../book/support/folder';
import { sha } from './book-support';
import { wishFor } from './support';

describe('a converted picture without its original', () => {
  it('is told by its own record, unless its name or the book says where the original is', async () => {
    const folder = temporaryFolder({ 'text.jpg': 'no picture' });
    const at = (name: string) => path.join(folder, name);
    const size = { width: 8, height: 8, channels: 3 as const, background: { r: 90, g: 120, b: 60 } };
    await sharp({ create: size }).tiff().toFile(at('plate.tif'));
    for (const result of ['converted.tif', 'plate.rgb-neutral.tif'])
      await remedyPicture(at('plate.tif'), at(result), wishFor({}));
    const unknown = ['converted.tif', 'plate.rgb-neutral.tif', 'text.jpg', 'gone.tif'].map(at);
    const from = sha(fs.readFileSync(at('plate.tif')));
    assert.deepEqual([...(await unkept(unknown, unknown))], [[at('converted.tif'), from]]);
    assert.deepEqual([...(await unkept(unknown, [...unknown, at('plate.tif')]))], []);
  });
});

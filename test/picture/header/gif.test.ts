import assert from 'node:assert/strict';
import { readGif } from '../../../src/picture/header/gif';
import { bufferSource } from '../../../src/picture/header/source';

/** Screen 100 x 50 without a colour table, then blocks (GIF89a, sections 18-26). */
const read = (...blocks: number[][]) =>
  readGif(bufferSource(Buffer.from([...Buffer.from('GIF89a'), 100, 0, 50, 0, 0, 0, 0, ...blocks.flat()])));
const image = (x = 0, y = 0, width = 100, height = 50) => [0x2c, x, 0, y, 0, width, 0, height, 0, 0];
const control = (transparent: number) => [0x21, 0xf9, 4, transparent, 0, 0, 0, 0];
const comment = [0x21, 0xfe, 3, 65, 66, 67, 2, 65, 66, 0];

describe('readGif', () => {
  it('reads the size, and a palette always', () => {
    const header = read(image());
    assert.deepEqual([header.width, header.height, header.palette, header.alpha], [100, 50, true, false]);
  });

  it('has alpha where a colour is transparent, or where the first frame leaves canvas free', () => {
    assert.equal(read(control(1), image()).alpha, true);
    assert.equal(read(control(0), image()).alpha, false);
    assert.equal(read(image(1)).alpha, true);
    assert.equal(read(image(0, 0, 99)).alpha, true);
  });

  it('steps over comments', () => {
    assert.equal(read(comment, control(1), comment, image()).alpha, true);
  });

  it('refuses a file without a frame, and ends on one that is cut', () => {
    assert.throws(() => read([0x3b]), { reason: 'corrupt' });
    assert.throws(() => read([0x21, 0xfe, 200, 1]), { reason: 'truncated' });
  });
});

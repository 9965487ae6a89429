import assert from 'node:assert/strict';
import { decode } from '../../../src/picture/decode';
import { bufferSource, readHeader } from '../../../src/picture/header';
import { Ifds } from '../../../src/picture/header/ifd';
import { tiffBytes } from '../../../src/remedy/file/tiff';
import { emptyTree } from '../../../src/remedy/metadata/tree';
import { bare, stored } from './stored';

describe('tiffBytes', () => {
  it('cuts strips of about a quarter of a megabyte that the file holds in order', async () => {
    const picture = stored('rgb', { bits: 16, width: 1000, height: 400 });
    const file = await tiffBytes(picture, bare());
    const ifds = new Ifds(bufferSource(file));
    const page = ifds.read(ifds.first);
    const rows = ifds.value1(page, 278, 0);
    assert.equal(rows, Math.floor(2 ** 18 / 6000));
    const [offsets, lengths] = [ifds.values(page, 273), ifds.values(page, 279)];
    assert.equal(offsets.length, Math.ceil(400 / rows));
    offsets.forEach((offset, i) => {
      const end = i === 0 ? offset : offsets[i - 1] + lengths[i - 1];
      assert.ok(offset - end <= 1 && offset % 2 === 0, 'at an even place, right behind the one before');
    });
    assert.ok(offsets.at(-1)! + lengths.at(-1)! <= file.length);
  });

  it('keeps the byte order of the metadata that it carries', async () => {
    for (const picture of [stored('rgb', { bits: 16 }), stored('cmyk', { bits: 16 }), stored('grey')]) {
      const file = await tiffBytes(picture, bare({ exif: { ...emptyTree(), bigEndian: true } }));
      assert.equal(file.toString('latin1', 0, 2), 'MM');
      const samples = await decode(file, readHeader(bufferSource(file)));
      assert.deepEqual(samples.data, picture.data);
    }
  });
});

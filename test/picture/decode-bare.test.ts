import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import { bareSamples, isBare } from '../../src/picture/decode-bare';
import { bufferSource, readHeader } from '../../src/picture/header';
import type { Header } from '../../src/picture/types';

const bytesOf = (name: string) => fs.readFileSync(path.join('test/picture/known', name));
const headerOf = (name: string, page = 1) => readHeader(bufferSource(bytesOf(name)), page);

describe('bare samples', () => {
  it('are found where a TIFF is nothing but its samples', () => {
    const bare = [
      'grey8',
      'grey16',
      'rgb8',
      'rgb8-alpha',
      'rgb16-alpha',
      'cmyk8',
      'cmyk16',
      'cmyk8-big',
      'turned',
    ];
    for (const name of bare) assert.ok(isBare(headerOf(`${name}.tif`)), name);
    assert.ok(isBare(headerOf('pages.tif', 4)));
  });

  it('are not found where anything has to be done with them', () => {
    const not = [
      'grey8-white0',
      'grey-float',
      'palette8',
      'lab8',
      'icclab16',
      'grey1',
      'grey4',
      'rgb8-extra',
      'rgb8-associated',
    ];
    for (const name of [
      ...not,
      'cmyk8-spot',
      'cmyk8-lzw',
      'cmyk8-zip',
      'cmyk8-planar',
      'cmyk8-tiled',
      'cmyk16-big',
      'per-cm',
    ])
      assert.ok(!isBare(headerOf(`${name}.tif`)), name);
    assert.ok(!isBare(headerOf('grey8.png')));
  });

  it('are a window onto the bytes, not a copy', () => {
    const bytes = bytesOf('cmyk8.tif');
    const samples = bareSamples(bytes, headerOf('cmyk8.tif'))!;
    assert.equal(samples.data.buffer, bytes.buffer);
    assert.equal(samples.data.length, 20 * 12 * 4);
  });

  it('are left to the decoder at an odd address or beyond the end', () => {
    const header = headerOf('grey16.tif');
    const odd: Header = { ...header, tiff: { ...header.tiff!, bareAt: header.tiff!.bareAt! + 1 } };
    assert.equal(bareSamples(bytesOf('grey16.tif'), odd), null);
    const cut = bytesOf('grey16.tif');
    assert.equal(bareSamples(cut.subarray(0, cut.length - 1), header), null);
  });
});

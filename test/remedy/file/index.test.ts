import assert from 'node:assert/strict';
import { decode } from '../../../src/picture/decode';
import { bufferSource, readHeader } from '../../../src/picture/header';
import type { Stored } from '../../../src/remedy/encode/stored';
import { fileBytes } from '../../../src/remedy/file';
import type { RemedyFormat } from '../../../src/shared/remedy';
import { bare, stored } from './stored';

const read = async (file: Buffer) => {
  const header = readHeader(bufferSource(file));
  return { header, samples: await decode(file, header) };
};

/** Every layout that a format holds without loss. */
const LOSSLESS: [RemedyFormat, Stored][] = [
  ...(['tiff', 'png'] as const).flatMap(format =>
    (['grey', 'rgb'] as const).flatMap(space =>
      ([8, 16] as const).flatMap(bits =>
        [false, true].map((alpha): [RemedyFormat, Stored] => [format, stored(space, { bits, alpha })]),
      ),
    ),
  ),
  ['tiff', stored('cmyk')],
  ['tiff', stored('cmyk', { bits: 16 })],
  ['tiff', stored('rgb', { bits: 16, width: 600, height: 300 })],
  ['tiff', stored('grey', { width: 1, height: 1 })],
  ['tiff', stored('grey', { width: 300_000, height: 2 })],
];

describe('fileBytes', () => {
  it('writes exactly the numbers that it was given', async () => {
    for (const [format, picture] of LOSSLESS) {
      const { bytes } = await fileBytes(picture, format, 100, bare());
      const { header, samples } = await read(bytes);
      const what = `${format} ${picture.space} ${picture.bits} ${picture.alpha} ${picture.width}`;
      assert.equal(header.format, format, what);
      assert.equal(header.space, picture.space, what);
      assert.equal(header.bits, picture.bits, what);
      assert.equal(samples.alpha, picture.alpha, what);
      assert.deepEqual(samples.data, picture.data, what);
    }
  });

  it('writes a JPEG within a level or two, neutral as neutral, inks with black alone', async () => {
    const smooth = (space: Stored['space'], channels: number): Stored => {
      const picture = stored(space);
      for (let i = 0; i < picture.data.length; i++)
        if (space !== 'cmyk' || i % channels === 3) picture.data[i] = (i / channels / 12) | 0;
      return picture;
    };
    for (const [space, channels] of [
      ['grey', 1],
      ['rgb', 3],
      ['cmyk', 4],
    ] as const) {
      const picture = smooth(space, channels);
      const { header, samples } = await read((await fileBytes(picture, 'jpeg', 100, bare())).bytes);
      assert.deepEqual([header.format, header.space, header.inverted], ['jpeg', space, false]);
      let worst = 0;
      picture.data.forEach((value, i) => {
        worst = Math.max(worst, Math.abs(value - samples.data[i]));
        if (space === 'cmyk' && i % 4 < 3) assert.equal(samples.data[i], 0, 'only black ink');
        if (space === 'rgb') assert.equal(samples.data[i], samples.data[i - (i % 3)], 'neutral');
      });
      assert.ok(worst <= 2, `${space}: off by ${worst}`);
    }
  });

  it('writes the same bytes again', async () => {
    const icc = Buffer.alloc(150_000, 'profile');
    for (const format of ['jpeg', 'png', 'tiff'] as const) {
      const write = async () => (await fileBytes({ ...stored('rgb'), icc }, format, 90, bare())).bytes;
      assert.deepEqual(await write(), await write(), format);
    }
  });

  it('embeds the profile whole, also one that a single JPEG segment cannot hold', async () => {
    const icc = Buffer.from(Uint8Array.from({ length: 150_000 }, (_, i) => i * 31));
    for (const format of ['jpeg', 'png', 'tiff'] as const) {
      const { bytes } = await fileBytes({ ...stored('rgb'), icc }, format, 90, bare());
      assert.deepEqual(Buffer.from(readHeader(bufferSource(bytes)).icc!), icc, format);
    }
  });

  it('says density and orientation by every format', async () => {
    const carried = bare({ density: { x: [300, 1], y: [200, 1], unit: 'inch' } });
    for (const format of ['jpeg', 'png', 'tiff'] as const) {
      const header = readHeader(bufferSource((await fileBytes(stored('grey'), format, 90, carried)).bytes));
      assert.deepEqual(header.ppi, { x: 300, y: 200 }, format);
    }
    const { bytes } = await fileBytes(stored('grey'), 'tiff', 90, bare({ orientation: 6 }));
    assert.equal(readHeader(bufferSource(bytes)).orientation, 6);
  });

  it('refuses what a format cannot hold', async () => {
    const refused: [RemedyFormat, Stored, RegExp][] = [
      ['png', stored('cmyk'), /PNG cannot hold inks/],
      ['jpeg', stored('grey', { bits: 16 }), /8 bits/],
      ['jpeg', stored('grey', { alpha: true }), /transparency/],
      ['jpeg', stored('grey', { width: 65_501, height: 1 }), /65500 pixels/],
    ];
    for (const [format, picture, message] of refused)
      await assert.rejects(fileBytes(picture, format, 90, bare()), { name: 'RemedyError', message });
  });
});

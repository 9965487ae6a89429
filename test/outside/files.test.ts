import assert from 'node:assert/strict';
import { execFileSync, spawnSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import type { Stored } from '../../src/remedy/encode/stored';
import { fileBytes } from '../../src/remedy/file';
import { withRecord } from '../../src/remedy/metadata';
import type { RemedyFormat } from '../../src/shared/remedy';
import { bare, stored } from '../remedy/file/stored';
import { need } from '../tools/need';

// What we write, read by ImageMagick and its libraries (Debian's imagemagick): numbers, layout, density.

const magick = (tool: 'convert' | 'identify', ...args: string[]) =>
  execFileSync(need(`/usr/bin/${tool}`, 'imagemagick'), args, { maxBuffer: 2 ** 26 });

const RECORD = { from: 'ab'.repeat(32), to: 'rgb-neutral', toned: false, parameters: 'words' } as const;
const ORDER = { grey: 'gray', rgb: 'rgb', cmyk: 'cmyk' } as const;

describe('written files, by ImageMagick', () => {
  let folder: string;
  before(() => (folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-files-'))));
  after(() => fs.rmSync(folder, { recursive: true }));

  async function write(picture: Stored, format: RemedyFormat): Promise<string> {
    const file = path.join(folder, `picture.${format}`);
    const density = { x: [300, 1], y: [200, 1], unit: 'inch' } as const;
    const carried = bare({ density, orientation: 6, iptc: Buffer.from('\x1c\x02\x05\0\x01a') });
    fs.writeFileSync(file, (await fileBytes(picture, format, 100, withRecord(carried, RECORD))).bytes);
    return file;
  }

  /** The stored channels; alpha last. */
  function channels(file: string, { space, bits, alpha }: Stored): Uint8Array | Uint16Array {
    const to = `${ORDER[space]}${alpha ? 'a' : ''}`;
    const bytes = magick('convert', file, '-depth', String(bits), '-endian', 'LSB', `${to}:-`);
    return bits === 8
      ? new Uint8Array(bytes)
      : new Uint16Array(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length));
  }

  it('hold exactly the numbers that were given', async function () {
    this.timeout(30_000);
    for (const [format, picture] of [
      ...(['tiff', 'png'] as const).flatMap(format =>
        (['grey', 'rgb'] as const).flatMap(space =>
          ([8, 16] as const).map(bits => [format, stored(space, { bits })] as const),
        ),
      ),
      ['tiff', stored('rgb', { alpha: true })],
      ['png', stored('rgb', { alpha: true, bits: 16 })],
      ['tiff', stored('cmyk')],
      ['tiff', stored('cmyk', { bits: 16 })],
    ] as [RemedyFormat, Stored][]) {
      const read = channels(await write(picture, format), picture);
      assert.deepEqual(read, picture.data, `${format} ${picture.space} ${picture.bits} ${picture.alpha}`);
    }
  });

  it('hold black ink alone also as JPEG', async () => {
    const picture = stored('cmyk');
    const read = channels(await write(picture, 'jpeg'), picture);
    assert.equal(read.length, picture.data.length);
    assert.ok(read.every((ink, i) => i % 4 === 3 || ink === 0));
    assert.ok(read.some((ink, i) => i % 4 === 3 && ink > 200));
  });

  it('say size, depth, density and, in a TIFF, orientation', async () => {
    const said = async (picture: Stored, format: RemedyFormat) =>
      magick(
        'identify',
        '-units',
        'PixelsPerInch',
        '-format',
        '%m %wx%h %z %[channels] %x %y',
        await write(picture, format),
      )
        .toString()
        .replace(/(\d+\.\d+)/g, value => String(Math.round(Number(value))));
    assert.equal(await said(stored('rgb', { bits: 16 }), 'tiff'), 'TIFF 67x45 16 srgb 300 200');
    assert.equal(await said(stored('cmyk'), 'tiff'), 'TIFF 67x45 8 cmyk 300 200');
    assert.equal(await said(stored('grey'), 'png'), 'PNG 67x45 8 gray 300 200');
    assert.equal(await said(stored('rgb'), 'jpeg'), 'JPEG 67x45 8 srgb 300 200');
    assert.equal(await said(stored('cmyk'), 'jpeg'), 'JPEG 67x45 8 cmyk 300 200');
    const turned = magick('identify', '-format', '%[orientation]', await write(stored('grey'), 'tiff'));
    assert.equal(turned.toString(), 'RightTop');
  });

  it('are read without a warning', async () => {
    for (const [format, picture] of [
      ['tiff', stored('cmyk', { bits: 16 })],
      ['tiff', stored('grey', { alpha: true })],
      ['png', stored('rgb')],
      ['jpeg', stored('cmyk')],
    ] as [RemedyFormat, Stored][]) {
      const file = await write(picture, format);
      const { stderr, status } = spawnSync('/usr/bin/identify', ['-regard-warnings', file], {
        encoding: 'utf8',
      });
      assert.deepEqual([stderr, status], ['', 0], format);
    }
  });
});

import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { deflateSync } from 'node:zlib';
import { bufferSource, readHeader } from '../../../src/picture/header';
import type { Header } from '../../../src/picture/types';
import { fileBytes } from '../../../src/remedy/file';
import { type Carried, carriedFrom, withRecord } from '../../../src/remedy/metadata';
import { chunk, frame, jpegBytes, LONG, pngBytes, SHORT, segment, tiffBytes } from '../../picture/bytes';
import { mutated, seeded } from '../../picture/mutate';
import { stored } from '../file/stored';
import { SOURCES, taggedPictures } from './tagged';

const RECORD = { from: 'cd'.repeat(32), to: 'rgb-neutral', toned: false, parameters: 'words' } as const;

const header = (format: Header['format'], page = 1) =>
  ({ format, page, orientation: 1 }) as unknown as Header;

/** Whatever was carried, the file must be whole and its record readable. */
async function writes(carried: Carried): Promise<void> {
  for (const format of ['jpeg', 'png', 'tiff'] as const) {
    const { bytes } = await fileBytes(stored('rgb'), format, 80, withRecord(carried, RECORD));
    const { remedied } = readHeader(bufferSource(bytes));
    assert.equal(remedied?.from, RECORD.from, format);
  }
}

const jpeg = (...parts: Buffer[]) => carriedFrom(jpegBytes(...parts, frame(3)), header('jpeg'));
const exif = (block: Buffer) => segment(0xe1, Buffer.concat([Buffer.from('Exif\0\0'), block]));
const xmp = (text: string | Buffer) =>
  segment(0xe1, Buffer.concat([Buffer.from('http://ns.adobe.com/xap/1.0/\0'), Buffer.from(text)]));
const rdf = (inside: string) =>
  `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#" xmlns:dc="http://purl.org/dc/elements/1.1/">${inside}</rdf:RDF></x:xmpmeta>`;

describe('metadata of hostile files', () => {
  it('are carried as far as they can be read, in 400 damaged copies', async function () {
    this.timeout(120_000);
    const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evengrey-hostile-'));
    const files = await taggedPictures(folder);
    const random = seeded(7);
    let told = 0;
    for (const format of SOURCES) {
      const bytes = fs.readFileSync(files[format]);
      const whole = readHeader(bufferSource(bytes));
      for (let i = 0; i < 80; i++) {
        const carried = carriedFrom(mutated(bytes, random), whole);
        told += carried.told.length;
        if (i % 8 === 0) await writes(carried);
      }
    }
    assert.ok(told > 50, `${told} losses told`);
    fs.rmSync(folder, { recursive: true });
  });

  it('with EXIF that is cut, points astray or at itself', async () => {
    const good = tiffBytes([
      [
        [34665, LONG, [8]],
        [315, SHORT, [1, 2, 3, 4, 5, 6]],
      ],
    ]);
    const astray = tiffBytes([
      [
        [315, 2, [65, 66, 67, 68, 69]],
        [305, 2, [65, 66, 67, 68, 69]],
      ],
    ]);
    astray.writeUInt32LE(0xfffffff0, 10 + 8);
    const endless = tiffBytes([[[315, 2, [65, 66, 67, 68, 69]]]]);
    endless.writeUInt32LE(0xffffffff, 10 + 4);
    for (const [block, message] of [
      [good.subarray(0, 12), /damaged and could not be carried/],
      [good.subarray(0, 5), /EXIF data of the file is damaged/],
      [Buffer.from('II*\0\xff\xff\xff\x7f', 'latin1'), /damaged and could not be carried/],
      [astray, /^One EXIF tag is damaged/],
      [endless, /^One EXIF tag is damaged/],
    ] as const) {
      const carried = jpeg(exif(block));
      assert.match(carried.told.join(), message);
      await writes(carried);
    }
    await writes(jpeg(exif(good)));
    const [kept] = jpeg(exif(astray)).exif!.main;
    assert.deepEqual([kept.id, kept.data.toString()], [305, 'ABCDE']);
  });

  it('with tags that share their bytes to ask for gigabytes', async () => {
    const size = 20 << 20;
    const block = Buffer.alloc(size + 8 + 2 + 900 * 12);
    block.write('II*\0\x08\0\0\0', 'latin1');
    block.writeUInt16LE(900, 8);
    for (let i = 0; i < 900; i++) {
      block.writeUInt16LE(60_000 + i, 10 + i * 12);
      block.writeUInt16LE(7, 12 + i * 12);
      block.writeUInt32LE(size, 14 + i * 12);
      block.writeUInt32LE(10 + 900 * 12 - 10, 18 + i * 12);
    }
    const png = pngBytes(8, 2, chunk('eXIf', block));
    const carried = carriedFrom(png, header('png'));
    assert.equal(carried.exif?.main.length, 1);
    assert.match(carried.told.join(), /899 EXIF tags are damaged/);
    const { told } = await fileBytes(stored('rgb'), 'jpeg', 80, carried);
    assert.match(told.join(), /One EXIF tag is too long for this format .*\(60000\)/);
  });

  it('with XMP that is no XML, a bomb, bottomless or far too long', async () => {
    const bomb = `<!DOCTYPE a [<!ENTITY a "${'b'.repeat(1000)}"><!ENTITY c "${'&a;'.repeat(1000)}">]>${rdf('<rdf:Description dc:title="&c;"/>')}`;
    const deep = rdf(`${'<rdf:Description>'.repeat(3000)}${'</rdf:Description>'.repeat(3000)}`);
    for (const text of ['', '<', '<a>', '\xff\xfe', 'no xml', rdf('<dc:title>'), rdf('<q:b/>'), bomb]) {
      const carried = jpeg(xmp(text));
      assert.equal(carried.xmp, null, text.slice(0, 40));
      assert.deepEqual(
        carried.told,
        ['The XMP data of the file are damaged and were left out.'],
        text.slice(0, 40),
      );
      await writes(carried);
    }
    await writes(jpeg(xmp(deep.slice(0, 60_000))));
    const long = Buffer.concat([
      Buffer.from('XML:com.adobe.xmp\0\0\0\0\0'),
      Buffer.alloc(9 << 20, rdf('<rdf:Description/>')),
    ]);
    const carried = carriedFrom(pngBytes(8, 2, chunk('iTXt', long)), header('png'));
    assert.match(carried.told.join(), /larger than can be carried/);
    await writes(carried);
  });

  it('with an extension of XMP that lies about its length or its name', async () => {
    const guid = 'A'.repeat(32);
    const main = xmp(
      rdf(`<rdf:Description xmlns:n="http://ns.adobe.com/xmp/note/" n:HasExtendedXMP="${guid}"/>`),
    );
    const extension = (length: number, at: number, name = guid) => {
      const place = Buffer.alloc(8);
      place.writeUInt32BE(length, 0);
      place.writeUInt32BE(at, 4);
      return segment(
        0xe1,
        Buffer.concat([
          Buffer.from(`http://ns.adobe.com/xmp/extension/\0${name}`),
          place,
          Buffer.from(rdf('<rdf:Description dc:source="x"/>')),
        ]),
      );
    };
    const { length } = rdf('<rdf:Description dc:source="x"/>');
    assert.match(jpeg(main, extension(length, 0)).xmp!, /dc:source="x"/);
    for (const part of [
      extension(0xffffffff, 0),
      extension(length, 0xfffffff0),
      extension(length, 0, 'B'.repeat(32)),
    ]) {
      const carried = jpeg(main, part);
      assert.match(carried.told.join(), /A part of the XMP data/);
      assert.doesNotMatch(carried.xmp!, /dc:source/);
      await writes(carried);
    }
  });

  it('with texts and profiles of a PNG that unpack to gigabytes', async () => {
    const bomb = deflateSync(Buffer.alloc(64 << 20));
    for (const keyword of ['Comment', 'Raw profile type iptc', 'XML:com.adobe.xmp']) {
      const text = chunk('zTXt', Buffer.concat([Buffer.from(`${keyword}\0\0`), bomb]));
      const carried = carriedFrom(pngBytes(8, 2, text), header('png'));
      assert.match(carried.told.join(), /text of the PNG is damaged/);
      assert.deepEqual([carried.texts, carried.iptc, carried.xmp], [[], null, null]);
      await writes(carried);
    }
  });

  it('with image resources that lie about their lengths', async () => {
    const resources = Buffer.from('Photoshop 3.0\x008BIM\x04\x04\0\0\xff\xff\xff\xff\x1c', 'latin1');
    const carried = jpeg(segment(0xed, resources));
    assert.equal(carried.iptc, null);
    assert.match(carried.told.join(), /image resources .* damaged/);
    await writes(carried);
  });
});

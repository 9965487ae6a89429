import assert from 'node:assert/strict';
import { signatureOf } from '../../../src/picture/header/signature';
import { bufferSource } from '../../../src/picture/header/source';

const of = (text: string) => signatureOf(bufferSource(Buffer.from(text, 'latin1')));

describe('signatureOf', () => {
  // first bytes from each format's own specification
  const cases: [bytes: string, format: string, name?: string][] = [
    ['\xff\xd8\xff\xe0', 'jpeg'],
    ['\x89PNG\r\n\x1a\n\0\0', 'png'],
    ['II*\0\x08\0\0\0', 'tiff'],
    ['II*\0\x10\0\0\0CR\x02\0', 'unknown', 'camera raw'],
    ['MM\0+\0\x08\0\0', 'tiff', 'BigTIFF'],
    ['RIFF\x10\0\0\0WEBPVP8 ', 'webp'],
    ['RIFF\x10\0\0\0WAVEfmt ', 'unknown', ''],
    ['GIF89a', 'gif'],
    ['8BPS\0\x01', 'psd'],
    ['\0\0\0\x0cjP  \r\n\x87\n', 'jp2'],
    ['%PDF-1.7', 'pdf'],
    ['\0\0\0\x18ftypavif\0\0\0\0avifmif1', 'avif'],
    ['\0\0\0\x18ftypmif1\0\0\0\0mif1avif', 'avif'],
    ['\0\0\0\x18ftypheic\0\0\0\0mif1heic', 'heic'],
    ['\0\0\0\x18ftypisom\0\0\0\0isomavc1', 'unknown', 'media container'],
    ['\0\0\0\x18ftypcrx \0\0\0\x01crx isom', 'unknown', 'camera raw'],
    ['version https://git-lfs.github.com/spec/v1\noid sha256:0\n', 'lfs-pointer'],
    [`BM\0\0\0\0\0\0\0\0\x36\0\0\0\x28\0\0\0${'\0'.repeat(20)}`, 'bmp'],
    ['BMW is a text that begins like a bitmap', 'unknown', ''],
    ['P5\n8 8\n255\n', 'unknown', 'portable bitmap (PNM)'],
    ['<svg xmlns="http://www.w3.org/2000/svg">', 'svg'],
    ['<?xml version="1.0"?>\n<!-- made by hand -->\n<svg>', 'svg'],
    ['<html><body><svg>', 'unknown', ''],
    ['\xff\x0a\xff', 'unknown', 'JPEG XL'],
    ['', 'unknown', ''],
  ];
  for (const [bytes, format, name] of cases)
    it(`knows ${JSON.stringify(bytes.slice(0, 24))} as ${name || format}`, () => {
      const found = of(bytes);
      assert.equal(found.format, format);
      if (name !== undefined) assert.equal(found.name, name);
    });
});

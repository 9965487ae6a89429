import { deflateSync } from 'node:zlib';
import { sharp } from '../../picture/decode-sharp';
import { XMP_KEYWORD } from '../../picture/header/png-text';
import type { Stored } from '../encode/stored';
import type { Carried } from '../metadata/carried';
import { perMetre } from '../metadata/density';
import { laidOut } from '../metadata/directories';
import { resourceBytes, withIptc } from '../metadata/resources';
import { IPTC_KEYWORD, rawProfileText } from '../metadata/source/raw-profile';
import { crc32 } from './crc';

/** PNG, third edition. */
const SIGNATURE = 8;
const IHDR_END = SIGNATURE + 12 + 13;

/** Lossless, grey or RGB, 8 or 16 bits, with or without alpha. */
export async function pngBytes(stored: Stored, carried: Carried): Promise<Buffer> {
  const pixels = await encoded(stored);
  const kept = [...chunks(pixels)].filter(({ type }) => type === 'IDAT' || type === 'IEND');
  return Buffer.concat([
    pixels.subarray(0, IHDR_END),
    ...metadata(stored, carried),
    ...kept.map(({ start, end }) => pixels.subarray(start, end)),
  ]);
}

function encoded({ data, width, height, space, bits, alpha }: Stored): Promise<Buffer> {
  const grey = space === 'grey';
  const channels = ((grey ? 1 : 3) + (alpha ? 1 : 0)) as 1 | 2 | 3 | 4;
  return sharp(data, { raw: { width, height, channels } })
    .toColourspace(bits === 16 ? (grey ? 'grey16' : 'rgb16') : grey ? 'b-w' : 'srgb')
    .png()
    .toBuffer();
}

/** Chunks behind IHDR of a file that is known to be whole. */
function* chunks(png: Buffer): Generator<{ type: string; start: number; end: number }> {
  for (let at = IHDR_END; at < png.length; ) {
    const end = at + 12 + png.readUInt32BE(at);
    yield { type: png.toString('latin1', at + 4, at + 8), start: at, end };
    at = end;
  }
}

function metadata({ icc }: Stored, carried: Carried): Buffer[] {
  const { density, exif, xmp, iptc, resources, texts } = carried;
  const parts: Buffer[] = [];
  if (icc) parts.push(chunk('iCCP', Buffer.from('ICC profile\0\0'), deflateSync(icc)));
  const pixels = density && perMetre(density);
  if (pixels) parts.push(chunk('pHYs', physical(pixels)));
  if (exif) parts.push(chunk('eXIf', laidOut(exif).bytes));
  if (xmp !== null) parts.push(international(XMP_KEYWORD, xmp));
  const list = withIptc(iptc, resources);
  if (list.length > 0) parts.push(compressed(IPTC_KEYWORD, rawProfileText('iptc', resourceBytes(list))));
  for (const { keyword, text } of texts) parts.push(international(keyword, text));
  return parts;
}

function physical({ x, y, unit }: NonNullable<ReturnType<typeof perMetre>>): Buffer {
  const body = Buffer.alloc(9);
  body.writeUInt32BE(x, 0);
  body.writeUInt32BE(y, 4);
  body[8] = unit;
  return body;
}

/** Text of plain characters, deflated. */
const compressed = (keyword: string, text: string): Buffer =>
  chunk('zTXt', Buffer.from(`${keyword}\0\0`), deflateSync(text));

/** Text in UTF-8, neither compressed nor translated. */
const international = (keyword: string, text: string): Buffer =>
  chunk('iTXt', Buffer.from(`${keyword}\0\0\0\0\0${text}`));

function chunk(type: string, ...body: Buffer[]): Buffer {
  const content = Buffer.concat([Buffer.from(type, 'latin1'), ...body]);
  const out = Buffer.alloc(content.length + 8);
  out.writeUInt32BE(content.length - 4, 0);
  content.copy(out, 4);
  out.writeUInt32BE(crc32(content), content.length + 4);
  return out;
}

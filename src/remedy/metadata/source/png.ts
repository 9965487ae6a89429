import { bufferSource } from '../../../picture/header';
import { PACKET } from '../../../picture/header/jpeg';
import { chunks } from '../../../picture/header/png';
import { isText, type PngText, pngText, XMP_KEYWORD } from '../../../picture/header/png-text';
import { type Density, fromMetre } from '../density';
import { type Found, nothing, takeExif } from './found';
import { rawProfileBytes, rawProfileOf } from './raw-profile';

/** What a PNG's chunks say (PNG third edition, section 11.3). */
export function fromPng(bytes: Buffer): Found {
  const found = nothing();
  for (const { type, at, length } of chunks(bufferSource(bytes))) {
    const body = bytes.subarray(at, at + length);
    if (type === 'pHYs') found.density ??= physical(body);
    else if (type === 'eXIf') takeExif(found, body);
    else if (isText(type)) {
      const text = pngText(type, body);
      if (text) take(found, text);
      else found.told.push('A text of the PNG is damaged and was left out.');
    }
  }
  return found;
}

function take(found: Found, text: PngText): void {
  const { keyword } = text;
  const raw = rawProfileOf(keyword);
  if (raw) takeRaw(found, raw, text.bytes);
  else if (keyword === XMP_KEYWORD) found.xmp ??= text.bytes;
  else
    found.texts.push({
      keyword,
      text: text.utf8 ? text.bytes.toString('utf8') : text.bytes.toString('latin1'),
    });
}

function takeRaw(found: Found, kind: string, text: Buffer): void {
  const bytes = rawProfileBytes(text);
  if (!bytes) found.told.push('A block of metadata in the PNG is damaged and was left out.');
  else if (kind === 'xmp') found.xmp ??= bytes;
  else if (kind === 'iptc' || kind === '8bim') takeIptc(found, bytes);
  else if (bytes.toString('latin1', 0, PACKET.length) === PACKET) found.xmp ??= bytes.subarray(PACKET.length);
  else takeExif(found, bytes);
}

/** Either bare data sets or a list of resources that holds them. */
function takeIptc(found: Found, bytes: Buffer): void {
  if (bytes.toString('latin1', 0, 4) === '8BIM') found.resources ??= bytes;
  else found.iptc ??= bytes;
}

function physical(body: Buffer): Density | null {
  if (body.length < 9) return null;
  const [x, y] = [body.readUInt32BE(0), body.readUInt32BE(4)];
  if (x === 0 || y === 0) return null;
  return body[8] === 1 ? fromMetre(x, y) : { x: [x, 1], y: [y, 1], unit: 'none' };
}

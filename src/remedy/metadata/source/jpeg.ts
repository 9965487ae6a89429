import { bufferSource } from '../../../picture/header';
import { PACKET, segments } from '../../../picture/header/jpeg';
import { LONGEST_PACKET } from '../../../picture/xmp/packet';
import type { Density } from '../density';
import { type Found, nothing, takeExif } from './found';
import { textOf } from './text';

const JFIF = 'JFIF\0';
const EXIF = 'Exif\0\0';
export const RESOURCES = 'Photoshop 3.0\0';
export const EXTENSION = 'http://ns.adobe.com/xmp/extension/\0';
const GUID = 32;

/** What a JPEG's marker segments say (JFIF 1.02; EXIF 2.32 section 4.5; XMP part 3 section 1.1; IPTC-IIM in resources). */
export function fromJpeg(bytes: Buffer): Found {
  const found = nothing();
  const resources: Buffer[] = [];
  const extensions: Buffer[] = [];
  for (const { marker, start, end } of segments(bufferSource(bytes))) {
    const body = bytes.subarray(start + 4, end);
    const starts = (text: string) => body.toString('latin1', 0, text.length) === text;
    if (marker === 0xe0 && starts(JFIF)) found.density ??= jfif(body);
    else if (marker === 0xe1 && starts(EXIF)) takeExif(found, body);
    else if (marker === 0xe1 && starts(PACKET)) found.xmp ??= body.subarray(PACKET.length);
    else if (marker === 0xe1 && starts(EXTENSION)) extensions.push(body.subarray(EXTENSION.length));
    else if (marker === 0xed && starts(RESOURCES)) resources.push(body.subarray(RESOURCES.length));
    else if (marker === 0xfe && body.length > 0) found.texts.push({ keyword: 'Comment', text: textOf(body) });
  }
  if (resources.length > 0) found.resources = Buffer.concat(resources);
  if (extensions.length > 0) extend(found, extensions);
  return found;
}

function jfif(body: Buffer): Density | null {
  if (body.length < 12) return null;
  const [x, y] = [body.readUInt16BE(8), body.readUInt16BE(10)];
  const unit = (['none', 'inch', 'cm'] as const)[body[7]];
  return unit && x > 0 && y > 0 ? { x: [x, 1], y: [y, 1], unit } : null;
}

/** Chunks of the one extension that the packet names: GUID, full length, offset, text (XMP part 3, section 1.1.3.1). */
function extend(found: Found, extensions: readonly Buffer[]): void {
  const name = /HasExtendedXMP\s*(?:=\s*["']|>)\s*([0-9A-Fa-f]{32})/.exec(
    found.xmp?.toString('latin1') ?? '',
  );
  const chunks = extensions.filter(
    chunk => chunk.length > GUID + 8 && chunk.toString('latin1', 0, GUID) === name?.[1],
  );
  const length = chunks.reduce((sum, chunk) => sum + chunk.length - GUID - 8, 0);
  const whole = chunks.length > 0 && chunks[0].readUInt32BE(GUID) === length && length <= LONGEST_PACKET;
  if (!whole) {
    found.told.push('A part of the XMP data does not belong to the rest, or is incomplete; it was left out.');
    return;
  }
  const more = Buffer.alloc(length);
  for (const chunk of chunks) chunk.copy(more, chunk.readUInt32BE(GUID + 4), GUID + 8);
  found.xmpMore = more;
}

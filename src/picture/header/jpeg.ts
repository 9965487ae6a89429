import type { Remark } from '../../shared/picture';
import type { Remedied } from '../../shared/remedy';
import type { Header } from '../types';
import { recordIn } from '../xmp/record';
import { perInch } from './density';
import { type Exif, parseExif } from './exif';
import { Numbers, type Source } from './source';
import { UnreadableError } from './unreadable';

/** What the marker segments before the first scan say (ITU-T T.81 annex B; JFIF 1.02; ICC.1 annex B.4). */
interface Segments {
  frame: { marker: number; precision: number; width: number; height: number; components: number } | null;
  jfif: { x: number; y: number } | null;
  exif: Exif | null;
  remedied: Remedied | null;
  /** Adobe's colour transform: 0 none, 1 YCbCr, 2 YCCK; null without the marker. */
  adobe: number | null;
  /** Profile chunks by their sequence number. */
  icc: Map<number, Buffer>;
  iccCount: number;
}

export const SOS = 0xda;
const EOI = 0xd9;
/** How the segment with the XMP packet begins (XMP part 3, section 1.1.3). */
export const PACKET = 'http://ns.adobe.com/xap/1.0/\0';

export function readJpeg(source: Source): Header {
  const found = walk(source);
  const { frame } = found;
  if (!frame)
    throw new UnreadableError(
      'truncated',
      'The JPEG ends before its picture begins. Copy or export it again.',
      'jpeg',
    );
  refuseUnknown(frame);
  const remarks: Remark[] = [];
  const fourInks = frame.components === 4;
  const inverted = fourInks && found.adobe === null;
  if (inverted)
    remarks.push({
      code: 'no-ink-marker',
      text: 'The JPEG has four inks and does not say which way they are stored; its numbers are taken as ink (0 = none).',
    });
  const icc = joinProfile(found);
  if (!icc && found.icc.size > 0)
    remarks.push({
      code: 'bad-profile',
      text: 'Parts of the embedded profile are missing; it was not used.',
    });
  return {
    format: 'jpeg',
    width: frame.width,
    height: frame.height,
    channels: frame.components,
    bits: frame.precision,
    sample: 'uint',
    alpha: false,
    palette: false,
    space: frame.components === 1 ? 'grey' : fourInks ? 'cmyk' : 'rgb',
    inverted,
    spots: 0,
    page: 1,
    pages: 1,
    orientation: found.exif?.orientation ?? 1,
    ppi: found.jfif ?? found.exif?.ppi ?? null,
    icc,
    remedied: found.remedied,
    remarks,
  };
}

function walk(source: Source): Segments {
  const found: Segments = {
    frame: null,
    jfif: null,
    exif: null,
    remedied: null,
    adobe: null,
    icc: new Map(),
    iccCount: 0,
  };
  for (const { marker, start, end } of segments(source))
    if (marker !== SOS) take(found, marker, source.bytes(start + 4, end - start - 4));
  return found;
}

/** Marker segments from the start of the file to the first scan, that one included; stray bytes lie between them. */
export function segments(source: Source): Generator<Segment> {
  return segmentsFrom(source, 2);
}

interface Segment {
  marker: number;
  start: number;
  end: number;
}

/** The same from any place between segments on, up to the next scan. */
export function* segmentsFrom(source: Source, from: number): Generator<Segment> {
  const n = new Numbers(source, true);
  for (let at = from; at + 4 <= source.size; ) {
    const marker = n.u8(at) === 0xff ? n.u8(at + 1) : 0;
    if (marker === EOI) return;
    if (marker === 0 || marker === 0xff) {
      at++; // stray or fill byte, which decoders skip
      continue;
    }
    if (marker === 1 || (marker >= 0xd0 && marker <= 0xd8)) {
      at += 2; // no length
      continue;
    }
    const end = at + 2 + n.u16(at + 2);
    if (end < at + 4 || end > source.size) return;
    yield { marker, start: at, end };
    if (marker === SOS) return;
    at = end;
  }
}

function take(found: Segments, marker: number, body: Buffer): void {
  const starts = (text: string) => body.toString('latin1', 0, text.length) === text;
  const isFrame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
  if (isFrame && body.length >= 6 && !found.frame) {
    found.frame = {
      marker,
      precision: body[0],
      height: body.readUInt16BE(1),
      width: body.readUInt16BE(3),
      components: body[5],
    };
  } else if (marker === 0xe0 && starts('JFIF\0') && body.length >= 12) {
    const unit = body[7];
    if (unit === 1 || unit === 2)
      found.jfif = perInch(body.readUInt16BE(8), body.readUInt16BE(10), unit === 1 ? 'inch' : 'cm');
  } else if (marker === 0xe1 && starts('Exif\0\0')) {
    found.exif ??= parseExif(body.subarray(6));
  } else if (marker === 0xe1 && starts(PACKET)) {
    found.remedied ??= recordIn(body.subarray(PACKET.length));
  } else if (marker === 0xe2 && starts('ICC_PROFILE\0') && body.length > 14) {
    found.icc.set(body[12], body.subarray(14));
    found.iccCount = body[13];
  } else if (marker === 0xee && starts('Adobe') && body.length >= 12) {
    found.adobe = body[11];
  }
}

/** The profile in the order of its sequence numbers, or null while a chunk is missing. */
function joinProfile({ icc, iccCount }: Segments): Buffer | null {
  if (icc.size === 0) return null;
  const chunks = Array.from({ length: iccCount }, (_, i) => icc.get(i + 1));
  return chunks.length > 0 && chunks.every(chunk => chunk !== undefined) ? Buffer.concat(chunks) : null;
}

function refuseUnknown(frame: NonNullable<Segments['frame']>): void {
  const refuse = (what: string) =>
    new UnreadableError(
      'format',
      `${what}. Export the picture as an ordinary JPEG or a TIFF.`,
      'jpeg',
      frame,
    );
  if (frame.precision !== 8)
    throw refuse(`The JPEG has ${frame.precision} bits a channel, which cannot be read`);
  if (![1, 3, 4].includes(frame.components))
    throw refuse(`The JPEG has ${frame.components} channels, which no print process takes`);
  if (frame.marker === 0xc3 || frame.marker >= 0xc5)
    if (![0xc9, 0xca].includes(frame.marker))
      throw refuse('The JPEG is stored in a lossless or hierarchical variant, which cannot be read');
}

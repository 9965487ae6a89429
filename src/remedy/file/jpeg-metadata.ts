// no-unit-test: jpeg.test.ts reads what it writes
import { PACKET } from '../../picture/header/jpeg';
import type { Stored } from '../encode/stored';
import type { Carried, Text } from '../metadata/carried';
import { jfifDensity } from '../metadata/density';
import { laidOut } from '../metadata/directories';
import { resourceBytes, withIptc } from '../metadata/resources';
import { EXTENSION, RESOURCES } from '../metadata/source/jpeg';
import { split } from '../metadata/xmp/split';

/** Marker segments (ITU-T T.81, annex B). */
const APP0 = 0xe0;
const APP1 = 0xe1;
const APP2 = 0xe2;
const APP13 = 0xed;
const COMMENT = 0xfe;

/** A segment's length has 16 bits and counts itself. */
const MOST_SEGMENT = 0xffff - 2;
const PROFILE_HEAD = 14;

/** The segments of a JPEG that say what goes along with its pixels, in the order that readers look for them. */
export function jpegMetadata({ space, icc }: Pick<Stored, 'space' | 'icc'>, carried: Carried): Buffer[] {
  const { density, exif, xmp, texts } = carried;
  const parts: Buffer[] = [];
  // JFIF 1.02 knows grey and YCbCr only; inks say their density by EXIF alone
  if (space !== 'cmyk') parts.push(segment(APP0, jfif(density)));
  if (exif) parts.push(segment(APP1, Buffer.from('Exif\0\0'), laidOut(exif).bytes));
  if (xmp !== null) parts.push(...packets(xmp));
  parts.push(...resources(carried));
  if (icc) parts.push(...profile(icc));
  for (const text of texts) parts.push(...comments(text));
  return parts;
}

/** The packet, and what does not fit into its segment in chunks behind. */
function packets(xmp: string): Buffer[] {
  const { packet, extension } = split(xmp, MOST_SEGMENT - PACKET.length);
  const first = segment(APP1, Buffer.from(PACKET), Buffer.from(packet));
  if (!extension) return [first];
  const head = Buffer.concat([Buffer.from(EXTENSION), Buffer.from(extension.guid)]);
  return [
    first,
    ...pieces(extension.bytes, MOST_SEGMENT - head.length - 8).map(({ bytes, at }) => {
      const place = Buffer.alloc(8);
      place.writeUInt32BE(extension.bytes.length, 0);
      place.writeUInt32BE(at, 4);
      return segment(APP1, head, place, bytes);
    }),
  ];
}

/** IPTC and the other image resources; where they are long, readers join several segments. */
function resources({ iptc, resources: others }: Carried): Buffer[] {
  const list = withIptc(iptc, others);
  if (list.length === 0) return [];
  return pieces(resourceBytes(list), MOST_SEGMENT - RESOURCES.length).map(({ bytes }) =>
    segment(APP13, Buffer.from(RESOURCES), bytes),
  );
}

/** A comment has no keyword, so any other text says what it is. */
function comments({ keyword, text }: Text): Buffer[] {
  const said = Buffer.from(keyword === 'Comment' ? text : `${keyword}: ${text}`);
  return pieces(said, MOST_SEGMENT).map(({ bytes }) => segment(COMMENT, bytes));
}

const pieces = (bytes: Buffer, most: number): { bytes: Buffer; at: number }[] =>
  Array.from({ length: Math.ceil(bytes.length / most) }, (_, i) => ({
    bytes: bytes.subarray(i * most, (i + 1) * most),
    at: i * most,
  }));

function segment(marker: number, ...body: Buffer[]): Buffer {
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(2 + body.reduce((sum, part) => sum + part.length, 0), 2);
  return Buffer.concat([head, ...body]);
}

function jfif(density: Carried['density']): Buffer {
  const { x, y, unit } = (density && jfifDensity(density)) ?? { x: 1, y: 1, unit: 0 };
  const body = Buffer.from('JFIF\0\x01\x02\0\0\0\0\0\0\0', 'latin1');
  body[7] = unit;
  body.writeUInt16BE(x, 8);
  body.writeUInt16BE(y, 10);
  return body;
}

/** In numbered chunks (ICC.1, annex B.4). */
function profile(icc: Uint8Array): Buffer[] {
  const chunks = pieces(Buffer.from(icc), MOST_SEGMENT - PROFILE_HEAD);
  return chunks.map(({ bytes }, i) =>
    segment(APP2, Buffer.from('ICC_PROFILE\0'), Buffer.from([i + 1, chunks.length]), bytes),
  );
}

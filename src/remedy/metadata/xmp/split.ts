import { createHash } from 'node:crypto';
import { XMLSerializer } from '@xmldom/xmldom';
import { descriptions, elementsOf, Ns, type Packet, parsePacket } from '../../../picture/xmp/packet';
import { emptyPacket, home, make, packetText } from './properties';

/** A packet for a JPEG's first segment, and what did not fit into it. */
export interface Split {
  packet: string;
  extension: { guid: string; bytes: Buffer } | null;
}

/** A property that names the extension. */
const NOTE_BYTES = 200;

/**
 * Moves the longest properties into an extension until the packet fits (XMP part 3, section 1.1.3.1); the history and
 * what else is of managing files stays.
 * @param most bytes of the first packet
 */
export function split(text: string, most: number): Split {
  if (Buffer.byteLength(text) <= most) return { packet: text, extension: null };
  const packet = parsePacket(Buffer.from(text))!;
  const extension = emptyPacket();
  let over = Buffer.byteLength(text) - most + NOTE_BYTES;
  for (const { el, bytes } of movable(packet)) {
    if (over <= 0) break;
    home(extension).appendChild(extension.document.importNode(el, true));
    el.parentNode?.removeChild(el);
    over -= bytes;
  }
  const bytes = Buffer.from(new XMLSerializer().serializeToString(extension.document.documentElement!));
  const guid = createHash('md5').update(bytes).digest('hex').toUpperCase();
  home(packet).appendChild(make(packet, Ns.xmpNote, 'HasExtendedXMP', guid));
  return { packet: packetText(packet), extension: { guid, bytes } };
}

/** Longest first; equal ones as they stand. */
function movable(packet: Packet) {
  const serializer = new XMLSerializer();
  return descriptions(packet)
    .flatMap(elementsOf)
    .filter(el => el.namespaceURI !== Ns.xmpMM)
    .map(el => ({ el, bytes: Buffer.byteLength(serializer.serializeToString(el)) }))
    .sort((a, b) => b.bytes - a.bytes);
}

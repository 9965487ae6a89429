import { descriptions, Ns, type Packet } from '../../../picture/xmp/packet';
import { remove } from './properties';

/** A packet and its extension as one (XMP part 3, section 1.1.3.1): the extension's properties stand behind. */
export function joined(packet: Packet, extension: Packet): Packet {
  remove(packet, [Ns.xmpNote, 'HasExtendedXMP']);
  for (const el of descriptions(extension)) packet.rdf.appendChild(packet.document.importNode(el, true));
  return packet;
}

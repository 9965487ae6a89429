import type { Element } from '@xmldom/xmldom';
import { XMLSerializer } from '@xmldom/xmldom';
import { descriptions, elementsOf, Ns, type Packet, parsePacket, xmlText } from '../../../picture/xmp/packet';

/** A top-level property of a packet: its namespace and its name. */
export type Property = readonly [namespace: string, name: string];

const PREFIX: Record<string, string> = {
  [Ns.xmpMM]: 'xmpMM',
  [Ns.ref]: 'stRef',
  [Ns.event]: 'stEvt',
  [Ns.xmpNote]: 'xmpNote',
};

/** A packet without a property. */
export function emptyPacket(): Packet {
  return parsePacket(
    Buffer.from(
      `<x:xmpmeta xmlns:x="${Ns.meta}"><rdf:RDF xmlns:rdf="${Ns.rdf}"><rdf:Description rdf:about=""/></rdf:RDF></x:xmpmeta>`,
    ),
  )!;
}

/** The packet as a file keeps it (ISO 16684-1, section 7.3): UTF-8, the wrapper around, no padding: we write files anew. */
export function packetText({ document }: Packet): string {
  const content = xmlText(new XMLSerializer().serializeToString(document.documentElement!));
  return `<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>\n${content}\n<?xpacket end="w"?>\n`;
}

/** The element of a property; null where it is none, or stands as an attribute. */
export function elementOf(packet: Packet, [namespace, name]: Property): Element | null {
  const all = descriptions(packet).flatMap(elementsOf);
  return all.find(el => el.namespaceURI === namespace && el.localName === name) ?? null;
}

/** The text of a simple property, whichever way it is written; null where it is none. */
export function textOf(packet: Packet, property: Property): string | null {
  const holder = descriptions(packet).find(el => el.hasAttributeNS(...property));
  return holder?.getAttributeNS(...property) ?? elementOf(packet, property)?.textContent ?? null;
}

/** @returns whether it was there */
export function remove(packet: Packet, property: Property): boolean {
  let found = false;
  for (const holder of descriptions(packet)) {
    found ||= holder.hasAttributeNS(...property);
    holder.removeAttributeNS(...property);
  }
  for (let el = elementOf(packet, property); el; el = elementOf(packet, property)) {
    el.parentNode?.removeChild(el);
    found = true;
  }
  return found;
}

/** Puts another text where the property stands, and nothing where it does not. */
export function replace(packet: Packet, property: Property, text: string): void {
  for (const holder of descriptions(packet)) {
    const attribute = holder.getAttributeNodeNS(...property);
    if (attribute) attribute.value = text;
  }
  const el = elementOf(packet, property);
  if (el) el.textContent = text;
}

/** A new element in the packet's document, not yet in its place; what declares its namespace goes along. */
export function make(packet: Packet, namespace: string, name: string, text?: string): Element {
  const el = packet.document.createElementNS(namespace, `${PREFIX[namespace] ?? 'rdf'}:${name}`);
  if (text !== undefined) el.textContent = text;
  return el;
}

/** A structure of simple fields (ISO 16684-1, section 7.9.2.3). */
export function structure(
  packet: Packet,
  el: Element,
  namespace: string,
  fields: Record<string, string | null>,
): Element {
  el.setAttributeNS(Ns.rdf, 'rdf:parseType', 'Resource');
  for (const [name, text] of Object.entries(fields))
    if (text !== null) el.appendChild(make(packet, namespace, name, text));
  return el;
}

/** Where new properties go: their namespaces are declared there, once, as most readers expect it. */
export function home(packet: Packet): Element {
  const el = descriptions(packet)[0] ?? newDescription(packet);
  for (const [namespace, prefix] of Object.entries(PREFIX))
    if (!el.hasAttributeNS(Ns.xmlns, prefix)) el.setAttributeNS(Ns.xmlns, `xmlns:${prefix}`, namespace);
  return el;
}

function newDescription(packet: Packet): Element {
  const el = make(packet, Ns.rdf, 'Description');
  el.setAttributeNS(Ns.rdf, 'rdf:about', '');
  packet.rdf.appendChild(el);
  return el;
}

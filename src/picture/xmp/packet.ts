import { DOMParser, type Document, type Element, onErrorStopParsing } from '@xmldom/xmldom';

/** Namespaces of ISO 16684-1 (XMP part 1) and of the schemas of XMP part 2. */
export const Ns = {
  rdf: 'http://www.w3.org/1999/02/22-rdf-syntax-ns#',
  meta: 'adobe:ns:meta/',
  dc: 'http://purl.org/dc/elements/1.1/',
  xmp: 'http://ns.adobe.com/xap/1.0/',
  xmpMM: 'http://ns.adobe.com/xap/1.0/mm/',
  xmpNote: 'http://ns.adobe.com/xmp/note/',
  ref: 'http://ns.adobe.com/xap/1.0/sType/ResourceRef#',
  event: 'http://ns.adobe.com/xap/1.0/sType/ResourceEvent#',
  tiff: 'http://ns.adobe.com/tiff/1.0/',
  exif: 'http://ns.adobe.com/exif/1.0/',
  photoshop: 'http://ns.adobe.com/photoshop/1.0/',
  xmlns: 'http://www.w3.org/2000/xmlns/',
} as const;

/** A packet has some kilobytes; one that remembers every ancestor of a layout some megabytes. */
export const LONGEST_PACKET = 8 << 20;

/** A packet that was read. */
export interface Packet {
  document: Document;
  /** Its `rdf:RDF`, which holds the properties. */
  rdf: Element;
}

/**
 * Reads a packet (ISO 16684-1). What stands around it, zero bytes and characters that XML does not know are passed over.
 * @param bytes UTF-8 or UTF-16
 * @returns null where it is no well-formed XMP, or longer than `LONGEST_PACKET`; definitions of entities are never followed
 */
export function parsePacket(bytes: Buffer): Packet | null {
  if (bytes.length > LONGEST_PACKET) return null;
  const text = xmlText(textOf(bytes)).trim();
  if (text === '' || text.includes('<!DOCTYPE')) return null;
  try {
    const document = new DOMParser({ onError: onErrorStopParsing }).parseFromString(text, 'text/xml');
    const rdf = document.getElementsByTagNameNS(Ns.rdf, 'RDF')[0];
    return rdf ? { document, rdf } : null;
  } catch {
    return null; // also of a depth that no stack holds
  }
}

/** Without the characters that XML 1.0 (section 2.2) does not allow; the parser would let them pass. */
export const xmlText = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
  text.replace(/[\p{Surrogate}\0-\x08\x0b\x0c\x0e-\x1f\ufeff\ufffe\uffff]/gu, '');

/** A packet is XML from its first character on, so the zero bytes around that tell 16 bits and their order. */
function textOf(bytes: Buffer): string {
  const mark = bytes.length < 2 ? 0 : bytes.readUInt16BE();
  if (mark === 0xfffe || mark === 0x3c00) return bytes.toString('utf16le');
  if (mark === 0xfeff || mark === 0x003c)
    return Buffer.from(bytes.subarray(0, bytes.length & ~1))
      .swap16()
      .toString('utf16le');
  return bytes.toString('utf8');
}

/** Child elements only. */
export const elementsOf = (parent: Element): Element[] =>
  [...parent.childNodes].filter((node): node is Element => node.nodeType === node.ELEMENT_NODE);

/** The `rdf:Description` elements that hold a packet's properties. */
export const descriptions = ({ rdf }: Packet): Element[] =>
  elementsOf(rdf).filter(el => el.namespaceURI === Ns.rdf && el.localName === 'Description');

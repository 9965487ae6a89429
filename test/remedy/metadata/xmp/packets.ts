// no-unit-test: part of the tests
import { type Packet, parsePacket } from '../../../../src/picture/xmp/packet';

const HEAD = [
  'xmlns:x="adobe:ns:meta/"',
  'xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"',
  'xmlns:dc="http://purl.org/dc/elements/1.1/"',
  'xmlns:tiff="http://ns.adobe.com/tiff/1.0/"',
  'xmlns:exif="http://ns.adobe.com/exif/1.0/"',
  'xmlns:xmp="http://ns.adobe.com/xap/1.0/"',
  'xmlns:xmpMM="http://ns.adobe.com/xap/1.0/mm/"',
  'xmlns:xmpNote="http://ns.adobe.com/xmp/note/"',
  'xmlns:stEvt="http://ns.adobe.com/xap/1.0/sType/ResourceEvent#"',
  'xmlns:photoshop="http://ns.adobe.com/photoshop/1.0/"',
].join(' ');

/** Properties in one packet. */
export const packetOf = (...descriptions: string[]): Packet =>
  parsePacket(Buffer.from(`<x:xmpmeta ${HEAD}><rdf:RDF>${descriptions.join('')}</rdf:RDF></x:xmpmeta>`))!;

/** One description with properties as attributes and as elements. */
export const description = (attributes: string, elements = ''): string =>
  `<rdf:Description rdf:about="" ${attributes}>${elements}</rdf:Description>`;

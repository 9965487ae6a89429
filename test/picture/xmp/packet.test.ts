import assert from 'node:assert/strict';
import {
  descriptions,
  elementsOf,
  LONGEST_PACKET,
  parsePacket,
  xmlText,
} from '../../../src/picture/xmp/packet';

const RDF = 'http://www.w3.org/1999/02/22-rdf-syntax-ns#';
const packet = (inside: string) =>
  `<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?><x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="${RDF}">${inside}</rdf:RDF></x:xmpmeta><?xpacket end="w"?>`;
const ONE = '<rdf:Description rdf:about=""><a xmlns="u">ö</a></rdf:Description>';
const text = (bytes: Buffer) => {
  const parsed = parsePacket(bytes);
  return (
    parsed &&
    descriptions(parsed)
      .flatMap(elementsOf)
      .map(el => el.textContent)
  );
};

describe('parsePacket', () => {
  it('reads UTF-8 and UTF-16 of either order, with and without a mark', () => {
    const utf16 = Buffer.from(packet(ONE), 'utf16le');
    const mark = Buffer.from('\ufeff', 'utf16le');
    for (const bytes of [
      Buffer.from(packet(ONE)),
      Buffer.from(`\ufeff${packet(ONE)}`),
      utf16,
      Buffer.concat([mark, utf16]),
      Buffer.from(utf16).swap16(),
      Buffer.concat([mark, utf16]).swap16(),
    ])
      assert.deepEqual(text(bytes), ['ö']);
  });

  it('passes over zero bytes behind and characters that XML does not know', () => {
    assert.deepEqual(text(Buffer.from(`${packet(ONE)}\0\0\0`)), ['ö']);
    assert.deepEqual(text(Buffer.from(packet(ONE.replace('ö', '\x01ö\x1f')))), ['ö']);
  });

  it('gives nothing of what is no packet', () => {
    for (const bad of [
      '',
      ' ',
      '<',
      '<a/>',
      packet('<b>'),
      packet('<n:b/>'),
      packet('&no;'),
      `<!DOCTYPE x>${packet(ONE)}`,
    ])
      assert.equal(parsePacket(Buffer.from(bad)), null, bad);
    assert.equal(parsePacket(Buffer.from(packet(' '.repeat(LONGEST_PACKET)))), null);
  });

  it('finds descriptions only where they hold properties', () => {
    const parsed = parsePacket(Buffer.from(packet(`${ONE}<rdf:Bag/>${ONE}`)));
    assert.equal(descriptions(parsed!).length, 2);
  });
});

describe('xmlText', () => {
  it('keeps what XML 1.0 allows', () => {
    assert.equal(xmlText('a\tb\nc\rd\u{1f600}\ufffd'), 'a\tb\nc\rd\u{1f600}\ufffd');
    assert.equal(xmlText('a\0b\x08c\x0bd\x1fe\ufffef\ud800g'), 'abcdefg');
  });
});

import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { Ns, parsePacket } from '../../../../src/picture/xmp/packet';
import { joined } from '../../../../src/remedy/metadata/xmp/joined';
import { packetText, textOf } from '../../../../src/remedy/metadata/xmp/properties';
import { split } from '../../../../src/remedy/metadata/xmp/split';
import { description, packetOf } from './packets';

const text = packetText(
  packetOf(
    description(
      'dc:format="image/tiff"',
      `<xmpMM:History>${'h'.repeat(3000)}</xmpMM:History><dc:source>${'ü'.repeat(2000)}</dc:source><dc:title>short</dc:title>`,
    ),
  ),
);

describe('split', () => {
  it('leaves a packet that fits', () => {
    assert.deepEqual(split(text, Buffer.byteLength(text)), { packet: text, extension: null });
  });

  it('moves the longest properties into an extension, and never the history', () => {
    const { packet, extension } = split(text, 5000);
    assert.ok(Buffer.byteLength(packet) <= 5000);
    assert.match(packet, /h{3000}/);
    assert.match(packet, /short/);
    assert.doesNotMatch(packet, /ü/);
    assert.equal(extension!.guid, createHash('md5').update(extension!.bytes).digest('hex').toUpperCase());
    const main = parsePacket(Buffer.from(packet))!;
    assert.equal(textOf(main, [Ns.xmpNote, 'HasExtendedXMP']), extension!.guid);
    const whole = joined(main, parsePacket(extension!.bytes)!);
    for (const name of ['format', 'source', 'title'])
      assert.equal(textOf(whole, [Ns.dc, name]), textOf(parsePacket(Buffer.from(text))!, [Ns.dc, name]));
  });
});

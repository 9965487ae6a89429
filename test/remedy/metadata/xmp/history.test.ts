import assert from 'node:assert/strict';
import { elementsOf, Ns } from '../../../../src/picture/xmp/packet';
import { recordIn } from '../../../../src/picture/xmp/record';
import { record } from '../../../../src/remedy/metadata/xmp/history';
import { elementOf, emptyPacket, packetText } from '../../../../src/remedy/metadata/xmp/properties';
import { description, packetOf } from './packets';

const REMEDIED = { from: 'ef'.repeat(32), to: 'single-channel', toned: true, fitted: false } as const;
const read = (text: string) => recordIn(Buffer.from(text));

describe('record', () => {
  it('is read again as it was written', () => {
    const packet = emptyPacket();
    record(packet, REMEDIED, 'by lightness; <&"', '1.2');
    assert.deepEqual(read(packetText(packet)), REMEDIED);
  });

  it('stands behind the history that was there, and names the last source only', () => {
    const packet = packetOf(
      description(
        '',
        '<xmpMM:DerivedFrom>old</xmpMM:DerivedFrom><xmpMM:History><rdf:Seq><rdf:li stEvt:action="created"/></rdf:Seq></xmpMM:History>',
      ),
    );
    record(packet, { ...REMEDIED, from: '00'.repeat(32) }, 'first', '1.2');
    record(packet, REMEDIED, 'second', '1.2');
    const [list] = elementsOf(elementOf(packet, [Ns.xmpMM, 'History'])!);
    assert.deepEqual(
      elementsOf(list).map(li => /created|first|second/.exec(`${li}`)?.[0]),
      ['created', 'first', 'second'],
    );
    assert.doesNotMatch(packetText(packet), /DerivedFrom>old|0000/);
    assert.deepEqual(read(packetText(packet)), REMEDIED);
  });

  it('makes a history of one that is none', () => {
    const packet = packetOf(description('xmpMM:History="text"'));
    record(packet, REMEDIED, 'words', '1.2');
    assert.deepEqual(read(packetText(packet)), REMEDIED);
  });
});

import assert from 'node:assert/strict';
import { Ns } from '../../../../src/picture/xmp/packet';
import { joined } from '../../../../src/remedy/metadata/xmp/joined';
import { textOf } from '../../../../src/remedy/metadata/xmp/properties';
import { description, packetOf } from './packets';

describe('joined', () => {
  it('has the properties of both and no longer names an extension', () => {
    const one = joined(
      packetOf(description('xmpNote:HasExtendedXMP="X" dc:format="a"')),
      packetOf(description('', '<dc:source>b</dc:source>')),
    );
    const texts = (
      [
        [Ns.dc, 'format'],
        [Ns.dc, 'source'],
        [Ns.xmpNote, 'HasExtendedXMP'],
      ] as const
    ).map(p => textOf(one, p));
    assert.deepEqual(texts, ['a', 'b', null]);
  });
});

import assert from 'node:assert/strict';
import { Ns, parsePacket } from '../../../../src/picture/xmp/packet';
import {
  elementOf,
  emptyPacket,
  home,
  make,
  type Property,
  packetText,
  remove,
  replace,
  structure,
  textOf,
} from '../../../../src/remedy/metadata/xmp/properties';
import { description, packetOf } from './packets';

const FORMAT: Property = [Ns.dc, 'format'];
const SOURCE: Property = [Ns.dc, 'source'];
const packet = () =>
  packetOf(description('dc:format="a"', '<dc:source>b</dc:source>'), description('dc:format="c"'));

describe('properties of a packet', () => {
  it('are read as attributes and as elements', () => {
    assert.deepEqual(
      [FORMAT, SOURCE, [Ns.dc, 'title'] as const].map(p => textOf(packet(), p)),
      ['a', 'b', null],
    );
    assert.deepEqual(
      [FORMAT, SOURCE].map(p => elementOf(packet(), p)?.textContent),
      [undefined, 'b'],
    );
  });

  it('go wherever they stand', () => {
    const one = packet();
    assert.deepEqual([remove(one, FORMAT), remove(one, SOURCE), remove(one, SOURCE)], [true, true, false]);
    assert.doesNotMatch(packetText(one), /dc:format|dc:source/);
  });

  it('change only where they are', () => {
    const one = packet();
    replace(one, FORMAT, 'new');
    replace(one, SOURCE, '<&>');
    replace(one, [Ns.dc, 'title'], 'never');
    assert.deepEqual(
      [textOf(one, FORMAT), textOf(one, SOURCE), textOf(one, [Ns.dc, 'title'])],
      ['new', '<&>', null],
    );
    assert.doesNotMatch(packetText(one), /format="[ac]"/);
  });

  it('are written as a well-formed packet that is read again', () => {
    const one = emptyPacket();
    const el = structure(one, make(one, Ns.xmpMM, 'DerivedFrom'), Ns.ref, {
      instanceID: '"<&>\u0001',
      documentID: null,
    });
    home(one).appendChild(el);
    const text = packetText(one);
    assert.match(text, /^<\?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"\?>/);
    const again = parsePacket(Buffer.from(text));
    assert.equal(elementOf(again!, [Ns.xmpMM, 'DerivedFrom'])?.textContent, '"<&>');
    assert.equal(packetText(again!), text);
  });

  it('find a home where there is none', () => {
    const bare = packetOf();
    home(bare).appendChild(make(bare, Ns.xmpNote, 'HasExtendedXMP', 'X'));
    assert.equal(textOf(bare, [Ns.xmpNote, 'HasExtendedXMP']), 'X');
  });
});

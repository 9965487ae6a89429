import assert from 'node:assert/strict';
import { readHeif } from '../../../src/picture/header/heif';
import { bufferSource } from '../../../src/picture/header/source';
import { box } from '../bytes';

const bytes = (...values: number[]) => Buffer.from(values);
const version = bytes(0, 0, 0, 0);
const latin = (text: string) => Buffer.from(text, 'latin1');

interface Made {
  /** Item type of the main picture. */
  type?: string;
  /** Bits of `av1C` byte 2: 0x40 high depth, 0x20 twelve, 0x10 monochrome. */
  flags?: number;
  turned?: number;
  profile?: string;
}

/** The boxes that say what the main picture is (ISO/IEC 23008-12), with an alpha item beside it. */
function avif({ type = 'av01', flags = 0, turned = 0, profile = '' }: Made = {}): Buffer {
  const item = (id: number, kind: string) => box('infe', bytes(2, 0, 0, 0, 0, id, 0, 0), latin(`${kind}\0`));
  const properties = [
    box('ispe', version, bytes(0, 0, 0, 100, 0, 0, 0, 50)),
    box('av1C', bytes(0x81, 0, flags, 0)),
    box('irot', bytes(turned)),
    box('colr', latin(`prof${profile}`)),
    box('auxC', version, latin('urn:mpeg:mpegB:cicp:systems:auxiliary:alpha\0')),
  ];
  const associations = bytes(0, 0, 0, 0, 0, 0, 0, 2, 0, 1, 4, 1, 2, 3, 4, 0, 2, 1, 5);
  return Buffer.concat([
    box('ftyp', latin('avif\0\0\0\0avifmif1')),
    box(
      'meta',
      version,
      box('pitm', version, bytes(0, 1)),
      box('iinf', version, bytes(0, 2), item(1, type), item(2, type)),
      box('iref', version, box('auxl', bytes(0, 2, 0, 1, 0, 1))),
      box('iprp', box('ipco', ...properties), box('ipma', associations)),
    ),
  ]);
}

const read = (made: Made = {}) => readHeif(bufferSource(avif(made)), 'avif');

describe('readHeif', () => {
  it('reads size, depth, alpha and profile of the main picture', () => {
    const header = read({ profile: 'abc' });
    assert.deepEqual(
      [header.format, header.width, header.height, header.bits, header.alpha, header.channels],
      ['avif', 100, 50, 8, true, 3],
    );
    assert.equal(Buffer.from(header.icc!).toString(), 'abc');
    assert.deepEqual(
      [0x40, 0x60].map(flags => read({ flags }).bits),
      [10, 12],
    );
  });

  it('gives the size as turned by the container', () => {
    const header = read({ turned: 3 });
    assert.deepEqual([header.width, header.height], [50, 100]);
    assert.equal(read({ turned: 2 }).width, 100);
  });

  it('says when one channel is stored where three are shown', () => {
    const header = read({ flags: 0x10 });
    assert.equal(header.channels, 3);
    assert.deepEqual(
      header.remarks.map(r => r.code),
      ['monochrome-container'],
    );
  });

  it('tells the codec that cannot be read by the item, not by the name', () => {
    assert.equal(read({ type: 'hvc1' }).format, 'heic');
  });

  it('refuses a container without a picture and one that is cut', () => {
    const whole = avif();
    assert.throws(() => readHeif(bufferSource(whole.subarray(0, 24)), 'avif'), { reason: 'corrupt' });
    assert.throws(() => readHeif(bufferSource(whole.subarray(0, 60)), 'avif'), { reason: 'truncated' });
  });
});

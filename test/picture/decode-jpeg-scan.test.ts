import assert from 'node:assert/strict';
import { lastScan, runStart } from '../../src/picture/decode-jpeg-scan';

const SOI = [0xff, 0xd8];
const EOI = [0xff, 0xd9];
/** A scan's header, two bytes long. */
const SOS = [0xff, 0xda, 0, 2];
const of = (...parts: (number[] | Buffer)[]) => lastScan(Buffer.concat(parts.map(part => Buffer.from(part))));

describe('the last scan of a JPEG', () => {
  it('ends at the mark of the end, whatever follows', () => {
    const scan = { from: 6, to: 9, ended: true, odd: false };
    assert.deepEqual(of(SOI, SOS, [1, 2, 3], EOI), scan);
    assert.deepEqual(of(SOI, SOS, [1, 2, 3], EOI, SOI, SOS, [4], EOI), scan);
    assert.deepEqual(of(SOI, SOS, [1, 2, 3], [0xff], EOI)!.ended, true);
  });
  it('holds zeros behind 0xFF and restarts', () => {
    const data = [1, 0xff, 0, 2, 0xff, 0xd3, 3];
    assert.deepEqual(of(SOI, SOS, data, EOI), { from: 6, to: 13, ended: true, odd: false });
  });
  it('is the last of several, with segments between', () => {
    const comment = [0xff, 0xfe, 0, 3, 7];
    assert.deepEqual(of(SOI, SOS, [1, 2], comment, SOS, [3], comment, EOI), {
      from: 17,
      to: 18,
      ended: true,
      odd: false,
    });
  });
  it('has no end where the file has none', () => {
    assert.deepEqual(of(SOI, SOS, [1, 2, 3]), { from: 6, to: 9, ended: false, odd: false });
    assert.deepEqual(of(SOI, SOS, [1, 2, 3, 0xff]), { from: 6, to: 10, ended: false, odd: false });
    assert.equal(of(SOI, SOS, [1, 2], [0xff, 0xfe, 0, 9, 9])!.ended, false);
  });
  it('is none where the file has none', () => assert.equal(of(SOI, [0xff, 0xfe, 0, 2], EOI), null));

  it('is odd where 256 bytes are equal, wherever they begin', () => {
    for (let before = 0; before < 140; before++) {
      const lead = Array.from({ length: before }, (_, i) => 1 + (i % 7));
      const odd = (run: number, byte = 0) => of(SOI, SOS, lead, Buffer.alloc(run, byte), [9, 8, 7], EOI)!.odd;
      assert.deepEqual([odd(256), odd(900), odd(256, 85), odd(255)], [true, true, true, false], `${before}`);
    }
  });
  it('tells where a run begins', () => {
    assert.equal(runStart(Buffer.from([1, 2, 2, 2]), 3, 0), 1);
    assert.equal(runStart(Buffer.from([2, 2, 2, 2]), 3, 2), 2);
  });
});

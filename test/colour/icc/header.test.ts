import assert from 'node:assert/strict';
import { readIccHeader } from '../../../src/colour/icc/header';

/** A minimal profile of one tag; `change` spoils it. */
function profile(change?: (view: DataView, text: (at: number, letters: string) => void) => void): Uint8Array {
  const bytes = new Uint8Array(160);
  const view = new DataView(bytes.buffer);
  const text = (at: number, letters: string) => bytes.set(new TextEncoder().encode(letters), at);
  view.setUint32(0, 160);
  view.setUint8(8, 4);
  view.setUint8(9, 0x30);
  text(12, 'prtr');
  text(16, 'CMYK');
  text(36, 'acsp');
  view.setUint32(128, 1);
  text(132, 'desc');
  view.setUint32(136, 144);
  view.setUint32(140, 16);
  change?.(view, text);
  return bytes;
}

// places and signatures: ICC.1:2010, 7.2 and 7.3
describe('the header of an ICC profile', () => {
  it('says space, class and version', () => {
    assert.deepEqual(readIccHeader(profile()), { space: 'cmyk', class: 'output', version: 4.3 });
  });

  const spoiled: [string, Parameters<typeof profile>[0], RegExp][] = [
    ['another signature', (_, text) => text(36, 'none'), /no ICC profile/],
    [
      'more bytes claimed than are there',
      view => view.setUint32(0, 161),
      /cut short: it says 161 bytes and 160/,
    ],
    ['fewer bytes claimed than a header', view => view.setUint32(0, 20), /cut short/],
    ['version 5', view => view.setUint8(8, 5), /version 5/],
    ['no tag', view => view.setUint32(128, 0), /damaged: its table names 0/],
    ['thousands of tags', view => view.setUint32(128, 5000), /damaged: its table names 5000/],
    ['a tag outside', view => view.setUint32(136, 150), /part 1 of 1 lies outside/],
    ['a tag whose length wraps around', view => view.setUint32(140, 0xffffffff), /part 1 of 1 lies outside/],
    ['a space that no picture here has', (_, text) => text(16, '6CLR'), /for "6CLR" values/],
    ['a device link', (_, text) => text(12, 'link'), /device link/],
    ['a class of its own', (_, text) => text(12, 'a\u0001bc'), /unknown class "a\?bc"/],
  ];
  for (const [name, change, message] of spoiled)
    it(`refuses ${name}`, () => assert.throws(() => readIccHeader(profile(change)), message));

  it('refuses what is too short, and reads a profile that lies inside other bytes', () => {
    assert.throws(() => readIccHeader(new Uint8Array(40)), /cut short: 40 bytes/);
    const around = new Uint8Array(200);
    around.set(profile(), 7);
    assert.equal(readIccHeader(around.subarray(7, 167)).space, 'cmyk');
  });
});

import assert from 'node:assert/strict';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { bufferSource, readHeader } from '../../../src/picture/header';
import { carriedFrom } from '../../../src/remedy/metadata';
import { iptcMerged } from '../../../src/remedy/metadata/iptc';
import { resourceBytes, withIptc } from '../../../src/remedy/metadata/resources';
import { greyPage, tiffBytes, UNDEFINED } from '../../picture/bytes';
import { exiftool } from './tagged';

const set = (record: number, number: number, value: string | Buffer) => {
  const bytes = Buffer.isBuffer(value) ? value : Buffer.from(value, 'latin1');
  return Buffer.concat([Buffer.from([0x1c, record, number, bytes.length >> 8, bytes.length & 255]), bytes]);
};
const block = (...sets: Buffer[]) => Buffer.concat(sets);
const keyword = (text: string | Buffer) => set(2, 25, text);
const headline = (text: string | Buffer) => set(2, 105, text);
const UTF8 = set(1, 90, '\x1b%G');

/** A TIFF that holds IPTC by itself (tag 33723) and among its resources (tag 34377). */
const twice = (alone: Buffer, among: Buffer) =>
  tiffBytes([
    greyPage([
      [33723, UNDEFINED, [...alone]],
      [34377, 1, [...resourceBytes(withIptc(among, []))]],
    ]),
  ]);

/** What another program finds in a block of IPTC. */
function found(iptc: Buffer): Record<string, unknown> {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'iptc-'));
  try {
    const file = path.join(folder, 'a.tif');
    fs.writeFileSync(file, tiffBytes([greyPage([[33723, UNDEFINED, [...iptc]]])]));
    const [{ SourceFile, ...tags }] = JSON.parse(exiftool('-json', '-validate', '-IPTC:all', file));
    return tags;
  } finally {
    fs.rmSync(folder, { recursive: true });
  }
}

describe('IPTC data that a file holds twice', () => {
  it('loses nothing that only one of them says', () => {
    const file = twice(
      block(set(2, 0, '\0\x04'), keyword('a')),
      block(set(2, 0, '\0\x04'), keyword('a'), keyword('b'), headline('Gate')),
    );
    const { iptc, told } = carriedFrom(file, readHeader(bufferSource(file)));
    const { Keywords, Headline } = found(iptc!);
    assert.deepEqual([Keywords, Headline, told], [['a', 'b'], 'Gate', []]);
  });

  it('tells what is said in two ways, and keeps what stands by itself', () => {
    const told: string[] = [];
    const iptc = iptcMerged(block(headline('Gate')), block(headline('Door'), keyword('b')), told);
    assert.deepEqual([found(iptc).Headline, found(iptc).Keywords], ['Gate', 'b']);
    assert.deepEqual(told, [
      'The file says its IPTC headline in two ways: "Gate" was kept, "Door" was left out.',
    ]);
  });

  it('brings both into one character set', () => {
    const told: string[] = [];
    const utf8 = block(UTF8, headline(Buffer.from('Hä')));
    const latin = block(keyword('b\xe4'));
    for (const iptc of [iptcMerged(utf8, latin, told), iptcMerged(latin, utf8, told)]) {
      assert.deepEqual([found(iptc).Headline, found(iptc).Keywords], ['Hä', 'bä']);
      assert.equal(iptc.indexOf(UTF8), 0);
    }
    // the same word in both, written in two ways, is one
    const one = iptcMerged(
      block(UTF8, keyword(Buffer.from('ä'))),
      block(keyword('\xe4'), keyword('b')),
      told,
    );
    assert.deepEqual([found(one).Keywords, told], [['ä', 'b'], []]);
  });

  it('leaves the first as it was where the second says nothing more, and takes what is long', () => {
    const first = block(headline('Gate'), keyword('a'));
    assert.equal(iptcMerged(first, block(keyword('a')), []), first);
    const long = Buffer.alloc(40_000, 'x');
    const head = Buffer.from([0x1c, 2, 120, 0x80, 4, 0, 0, long.length >> 8, long.length & 255]);
    const iptc = iptcMerged(first, block(head, long), []);
    assert.equal(found(iptc)['Caption-Abstract'], long.toString());
    // one that is cut short adds what is whole of it
    const cut = iptcMerged(first, block(keyword('b'), set(2, 120, 'lost').subarray(0, 6)), []);
    assert.deepEqual(found(cut).Keywords, ['a', 'b']);
  });

  it('tells of one that is damaged, and carries the other', () => {
    const file = twice(Buffer.from('no data'), block(keyword('b')));
    const { iptc, told } = carriedFrom(file, readHeader(bufferSource(file)));
    assert.equal(found(iptc!).Keywords, 'b');
    assert.deepEqual(told, [
      'The file holds IPTC data more than once; a damaged block of them was left out.',
    ]);
  });
});

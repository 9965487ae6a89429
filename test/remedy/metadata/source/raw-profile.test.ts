import assert from 'node:assert/strict';
import {
  rawProfileBytes,
  rawProfileOf,
  rawProfileText,
} from '../../../../src/remedy/metadata/source/raw-profile';

describe('raw profiles', () => {
  it('are known by their keyword', () => {
    assert.deepEqual(
      ['Raw profile type iptc', 'Raw profile type APP1', 'Raw profile type icc', 'Comment'].map(rawProfileOf),
      ['iptc', 'app1', null, null],
    );
  });

  it('are read as they are written', () => {
    const bytes = Buffer.from(Uint8Array.from({ length: 100 }, (_, i) => i));
    const text = rawProfileText('iptc', bytes);
    assert.match(text, /^\niptc\n {5}100\n[0-9a-f]{72}\n/);
    assert.deepEqual(rawProfileBytes(Buffer.from(text)), bytes);
  });

  it('are read as other programs write them: a longer name, capitals, another width', () => {
    // as exiftool 12.57 wrote it; IPTC named in words
    assert.deepEqual(
      rawProfileBytes(Buffer.from('\nIPTC profile\n       4\n1C02\n0500\n')),
      Buffer.from([0x1c, 2, 5, 0]),
    );
  });

  it('are nothing where their length is wrong or a digit is none', () => {
    for (const text of ['', '\niptc\n 4\n1c02\n', '\niptc\n 2\n1cxx\n', '\niptc\n1c02'])
      assert.equal(rawProfileBytes(Buffer.from(text)), null, text);
  });
});

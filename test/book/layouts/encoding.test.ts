import assert from 'node:assert/strict';
import { fileText } from '../../../src/book/layouts/encoding';

describe('the encoding of a layout', () => {
  const cases: Record<string, [Buffer, string]> = {
    'UTF-8': [Buffer.from('a ü 東\r\n'), 'a ü 東\r\n'],
    'UTF-8 with a mark': [Buffer.from('\uFEFFa'), '\uFEFFa'],
    'UTF-16, low byte first': [Buffer.from('\uFEFFü', 'utf16le'), '\uFEFFü'],
    'UTF-16, high byte first': [Buffer.from('\uFEFFü', 'utf16le').swap16(), '\uFEFFü'],
    'a byte a letter': [Buffer.from([0x61, 0xfc, 0x80, 0xff]), 'aü\x80ÿ'],
  };
  for (const [name, [bytes, expected]] of Object.entries(cases))
    it(`${name} is read, and gives its bytes back`, () => {
      const before = Buffer.from(bytes);
      const { text, encode } = fileText(bytes);
      assert.equal(text, expected);
      assert.deepEqual(encode(text), before);
      assert.deepEqual(bytes, before, 'what was read is not touched');
    });

  it('cannot hold every letter', () => {
    assert.equal(fileText(Buffer.from([0xfc])).encode('東'), null);
  });
});

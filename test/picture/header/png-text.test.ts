import assert from 'node:assert/strict';
import { deflateSync } from 'node:zlib';
import { isText, pngText } from '../../../src/picture/header/png-text';

const said = (type: string, body: Buffer) => {
  const text = pngText(type, body);
  return text && [text.keyword, text.bytes.toString('utf8'), text.utf8];
};

describe('pngText', () => {
  it('reads text plain, deflated and international', () => {
    assert.deepEqual(said('tEXt', Buffer.from('Title\0Gate')), ['Title', 'Gate', false]);
    assert.deepEqual(said('zTXt', Buffer.concat([Buffer.from('Title\0\0'), deflateSync('Gate')])), [
      'Title',
      'Gate',
      false,
    ]);
    assert.deepEqual(said('iTXt', Buffer.from('Title\0\0\0de\0Titel\0Tör')), ['Title', 'Tör', true]);
    const deflated = Buffer.concat([Buffer.from('Title\0\x01\0\0\0'), deflateSync('Tör')]);
    assert.deepEqual(said('iTXt', deflated), ['Title', 'Tör', true]);
  });

  it('gives nothing where the chunk is cut or damaged', () => {
    for (const [type, body] of [
      ['tEXt', 'Title'],
      ['tEXt', '\0text'],
      ['zTXt', 'Title\0\0no deflate'],
      ['iTXt', 'Title\0\0\0de'],
      ['iTXt', 'Title\0\0\0de\0Titel'],
      ['iTXt', 'Title\0\x01\0\0\0no deflate'],
    ])
      assert.equal(pngText(type, Buffer.from(body)), null, body);
  });

  it('knows which chunks are text', () => {
    assert.deepEqual(['tEXt', 'zTXt', 'iTXt', 'eXIf'].map(isText), [true, true, true, false]);
  });
});

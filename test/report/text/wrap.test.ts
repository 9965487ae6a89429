import assert from 'node:assert/strict';
import { columns, flow, indent, wrap } from '../../../src/report/text/wrap';

describe('text in lines', () => {
  it('breaks at spaces and keeps long words whole', () => {
    assert.deepEqual(wrap('one two three', 7), ['one two', 'three']);
    assert.deepEqual(wrap('a/very/long/path.jpg is', 8), ['a/very/long/path.jpg', 'is']);
    assert.deepEqual(wrap('', 8), []);
  });
  it('hangs further lines in', () => {
    assert.deepEqual(wrap('- one two three', 9, 2), ['- one two', '  three']);
  });
  it('keeps pieces whole, and counts no room for what paints them', () => {
    const loud = (text: string) => `<<${text}>>`;
    const pieces = [
      { text: 'a b', paint: loud },
      { text: 'c', after: ',', paint: loud },
      { text: 'd', apart: 2 },
    ];
    assert.deepEqual(flow(pieces, 9), ['<<a b>> <<c>>,  d']);
    assert.deepEqual(flow(pieces, 8), ['<<a b>> <<c>>,', 'd']);
    assert.deepEqual(flow(pieces, 5), ['<<a b>>', '<<c>>,  d']);
  });
  it('sets cells under each other', () => {
    assert.deepEqual(
      columns(
        [
          ['9', 'a'],
          ['10', 'bb'],
        ],
        [0],
      ),
      [' 9  a', '10  bb'],
    );
    assert.deepEqual(indent(['a', ''], 2), ['  a', '']);
  });
});

import assert from 'node:assert/strict';
import { Mapped } from '../../src/layout/mapped';

describe('a text that knows its places', () => {
  it('keeps them through slices and trims', () => {
    const text = Mapped.of('xx  ab c  yy', 2, 10).trim();
    assert.deepEqual([text.text, text.start, text.end], ['ab c', 4, 8]);
    const inner = text.slice(1, 2);
    assert.deepEqual([inner.text, inner.start, inner.end], ['b', 5, 6]);
  });

  it('is put together of stretches and of signs that stand for longer ones', () => {
    // a&amp;b|c
    const text = Mapped.build(add => {
      add('a', 0, 1);
      add('&', 1, 6);
      add('b', 6, 7);
      add('c', 8, 9);
    });
    assert.equal(text.text, 'a&bc');
    assert.deepEqual([text.slice(1, 2).start, text.slice(1, 2).end], [1, 6]);
    assert.deepEqual(
      [text.slice(1, 3).end, text.end],
      [7, 9],
      'up to its own last character, not to the next',
    );
    assert.equal(text.startAt(3), 8);
  });
});

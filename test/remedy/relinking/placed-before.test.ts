import assert from 'node:assert/strict';
import { placedBefore } from '../../../src/remedy/relinking/placed-before';

describe('pictures that layouts place already', () => {
  const line = { file: 'book.md', line: 3, column: 9, from: 'b.tif', to: 'b.png', picture: 'b.png' };
  const places = new Map([
    ['a.png', 'book.md:2'],
    ['b.png', 'book.md:3'],
  ]);

  it('are those that a line places without a change, each once', () => {
    assert.equal(placedBefore(['a.png', 'a.png', 'b.png', 'c.png'], places, [line]), 1);
    assert.equal(placedBefore(['a.png', 'b.png'], places, []), 2);
    assert.equal(placedBefore(['c.png'], places, []), 0);
  });
});

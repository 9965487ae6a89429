import assert from 'node:assert/strict';
import { lineFinder } from '../../src/layout/lines';

describe('lines and columns', () => {
  it('count from 1, whatever ends a line', () => {
    const lineOf = lineFinder('ab\ncd\r\ne\rf');
    const places = [0, 2, 3, 5, 7, 9].map(lineOf).map(({ line, column }) => `${line}:${column}`);
    assert.deepEqual(places, ['1:1', '1:3', '2:1', '2:3', '3:1', '4:1']);
  });

  it('count no byte order mark, as editors show none', () => {
    const lineOf = lineFinder('\uFEFFab\nc');
    assert.deepEqual([1, 2, 4].map(lineOf), [
      { line: 1, column: 1 },
      { line: 1, column: 2 },
      { line: 2, column: 1 },
    ]);
  });
});

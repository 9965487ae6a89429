import assert from 'node:assert/strict';
import { lineFinder } from '../../src/layout/lines';

describe('lines and columns', () => {
  it('count from 1, whatever ends a line', () => {
    const lineOf = lineFinder('ab\ncd\r\ne\rf');
    const places = [0, 2, 3, 5, 7, 9].map(lineOf).map(({ line, column }) => `${line}:${column}`);
    assert.deepEqual(places, ['1:1', '1:3', '2:1', '2:3', '3:1', '4:1']);
  });
});

import assert from 'node:assert/strict';
import { runsOf } from '../../../src/preview/plate/runs';

describe('marked cells as runs', () => {
  it('are the same cells, row by row', () => {
    const cells = ['.##.#', '.....', '#####', '#...#'].join('');
    const runs = runsOf({ width: 5, height: 4 }, cell => cells[cell] === '#');
    assert.deepEqual(runs, [
      { row: 0, from: 1, to: 3 },
      { row: 0, from: 4, to: 5 },
      { row: 2, from: 0, to: 5 },
      { row: 3, from: 0, to: 1 },
      { row: 3, from: 4, to: 5 },
    ]);
  });
});

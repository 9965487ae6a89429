import assert from 'node:assert/strict';
import { parseTable } from '../../src/colour/table';

describe('tables', () => {
  const table = parseTable('# source\nname,x\r\nfirst,1.5\nsecond,\n');

  it('skip comments and name their columns', () => {
    assert.deepEqual(table.columns, ['name', 'x']);
    assert.equal(table.rows, 2);
    assert.deepEqual(table.labels('name'), ['first', 'second']);
  });

  it('read an empty cell as no number, never as 0', () => {
    assert.deepEqual(Array.from(table.column('x')), [1.5, Number.NaN]);
  });

  it('say which column they lack', () =>
    assert.throws(() => table.column('y'), /no column "y" among name, x/));
});

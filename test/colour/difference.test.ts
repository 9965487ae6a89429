import assert from 'node:assert/strict';
import { dCh, dE00, dE76 } from '../../src/colour/difference';
import { parseTable } from '../../src/colour/table';
import pairs from './data/ciede2000-pairs.csv';

describe('colour differences', () => {
  it('CIEDE2000 meets all 34 published pairs', () => {
    const table = parseTable(pairs);
    const [l1, a1, b1, l2, a2, b2, de] = ['L1', 'a1', 'b1', 'L2', 'a2', 'b2', 'dE00'].map(n =>
      table.column(n),
    );
    assert.equal(table.rows, 34);
    for (let i = 0; i < table.rows; i++) {
      const is = dE00([l1[i], a1[i], b1[i]], [l2[i], a2[i], b2[i]]);
      assert.ok(Math.abs(is - de[i]) < 0.00006, `pair ${i + 1}: ${is}, published ${de[i]}`);
    }
  });

  it('measure plain distances in CIELAB, with and without lightness', () => {
    assert.equal(dE76([50, 0, 0], [52, 3, -6]), 7);
    assert.equal(dCh([50, 0, 0], [52, 3, -4]), 5);
  });
});

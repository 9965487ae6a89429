import assert from 'node:assert/strict';
import { fileRange } from '../../src/print/file-range';

const histogram = (shares: Record<number, number>) => Array.from({ length: 101 }, (_, L) => shares[L] ?? 0);

describe('range of a file', () => {
  it('goes from its darkest to its lightest tone', () =>
    assert.deepEqual(fileRange(histogram({ 17: 0.3, 50: 0.4, 92: 0.3 })), { from: 17, to: 92 }));
  it('leaves out dust and glints, all together no more than half a per cent of the area at either end', () => {
    const specks = { 0: 0.002, 3: 0.002, 40: 0.5, 60: 0.494, 100: 0.002 };
    assert.deepEqual(fileRange(histogram(specks)), { from: 40, to: 60 });
    assert.equal(fileRange(histogram({ ...specks, 3: 0.004 })).from, 3);
  });
  it('is one tone of a plain page', () =>
    assert.deepEqual(fileRange(histogram({ 88: 1 })), { from: 88, to: 88 }));
});

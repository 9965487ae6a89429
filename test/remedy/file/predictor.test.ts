import assert from 'node:assert/strict';
import { predicted } from '../../../src/remedy/file/predictor';

describe('predicted', () => {
  it('keeps the first pixel of each row and gives the others as differences, modulo 256', () => {
    const rows = Uint8Array.of(10, 20, 12, 19, 5, 255, 200, 1, 202, 3, 202, 3);
    assert.deepEqual([...predicted(rows, 2, 3, false)], [10, 20, 2, 255, 249, 236, 200, 1, 2, 2, 0, 0]);
    assert.deepEqual([...rows.subarray(0, 4)], [10, 20, 12, 19], 'what was given stays');
  });

  it('takes 16-bit differences modulo 65536, in the order of the file', () => {
    const rows = Uint16Array.of(0x0102, 0x0103, 0x0101);
    assert.deepEqual([...predicted(rows, 1, 3, false)], [2, 1, 1, 0, 0xfe, 0xff]);
    assert.deepEqual([...predicted(rows, 1, 3, true)], [1, 2, 0, 1, 0xff, 0xfe]);
  });
});

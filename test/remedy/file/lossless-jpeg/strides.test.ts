import assert from 'node:assert/strict';
import { acKey, type CodeTables, takeCodes } from '../../../../src/remedy/file/lossless-jpeg/codes-read';
import { LOOKED_AT } from '../../../../src/remedy/file/lossless-jpeg/strides';

/** Codes 00 (end), 01 (a number of 1 bit), 10 (16 zeros), 110 (3 zeros, then 2 bits), 11110 (a number of 8 bits). */
const CODES = [0x10, 0, 3, 1, 0, 1, ...new Array(11).fill(0), 0x00, 0x01, 0xf0, 0x32, 0x08];

describe('strides over coded coefficients', () => {
  const tables: CodeTables = new Map();
  takeCodes(tables, Uint8Array.from(CODES));
  const { strides } = tables.get(acKey(0))!;
  for (const [bits, coefficients, taken, ends] of [
    ['00 1111111111', 0, 2, true],
    ['01 1 01 0 01 1 01 0', 4, 12, false],
    ['01 1 01 0 01 1 00 1', 3, 11, true],
    ['10 10 00 111111', 32, 6, true],
    ['110 11 110 01 01', 8, 10, false],
    ['01 1 11110 0000', 1, 3, false],
    ['11110 0000000', 0, 0, false],
    ['11111 0000000', 0, 0, false],
    ['01 1 11111 0000', 1, 3, false],
  ] as const)
    it(`go as far as whole symbols do: ${bits}`, () => {
      const stride = strides[Number.parseInt(bits.replaceAll(' ', ''), 2)];
      assert.equal(bits.replaceAll(' ', '').length, LOOKED_AT);
      assert.deepEqual([stride >> 5, (stride >> 1) & 15, (stride & 1) === 1], [coefficients, taken, ends]);
    });
});

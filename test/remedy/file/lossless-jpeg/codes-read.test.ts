import assert from 'node:assert/strict';
import {
  acKey,
  type CodeTables,
  dcKey,
  takeCodes,
} from '../../../../src/remedy/file/lossless-jpeg/codes-read';
import { Unusual } from '../../../../src/remedy/file/lossless-jpeg/unusual';

/** Table K.3 of T.81, the usual codes of luminance's DC: how many of each length, then the categories. */
const K3 = [0, 1, 5, 1, 1, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11];
/** The same codes as the table prints them, by category. */
const PRINTED = ['00', '010', '011', '100', '101', '110', '1110', '11110', '111110', '1111110', '11111110'];

const taken = (...body: number[]) => {
  const tables: CodeTables = new Map();
  takeCodes(tables, Uint8Array.from(body));
  return tables;
};

describe('codes of a JPEG', () => {
  it('are those of the standard', () => {
    const { all } = taken(0x00, ...K3).get(dcKey(0))!;
    for (const [category, code] of PRINTED.entries())
      for (const fill of ['0', '1']) {
        const found = all[Number.parseInt(code.padEnd(16, fill), 2)];
        assert.deepEqual([found >> 8, found & 255], [code.length, category], code);
      }
    assert.equal(all[0xffff], 0, 'all ones is no code');
  });

  it('come several in a segment, each in its place', () => {
    const tables = taken(0x01, ...K3, 0x12, ...K3);
    assert.deepEqual([...tables.keys()], [dcKey(1), acKey(2)]);
  });

  it('are not taken where they cannot be', () => {
    const three = [3, ...new Array(15).fill(0), 1, 2, 3];
    for (const body of [
      [0x00, ...three],
      [0x04, ...K3],
      [0x20, ...K3],
      [0x00, ...K3.slice(0, 20)],
      [0x00, 1],
    ])
      assert.throws(() => taken(...body), Unusual, String(body.slice(0, 3)));
  });
});

import assert from 'node:assert/strict';
import { FieldMaker } from '../../../src/remedy/metadata/fields';

const hex = (bigEndian: boolean) => {
  const make = new FieldMaker(bigEndian);
  return [make.short(1, 1, 0x0203), make.long(2, 0xfffffffe), make.rational(3, [1, 2])].map(
    ({ type, count, data }) => [type, count, data.toString('hex')],
  );
};

describe('FieldMaker', () => {
  it('makes fields in either byte order', () => {
    assert.deepEqual(hex(true), [
      [3, 2, '00010203'],
      [4, 1, 'fffffffe'],
      [5, 1, '0000000100000002'],
    ]);
    assert.deepEqual(hex(false), [
      [3, 2, '01000302'],
      [4, 1, 'feffffff'],
      [5, 1, '0100000002000000'],
    ]);
  });

  it('ends a text with a zero byte, which counts', () => {
    const { type, count, data } = new FieldMaker(false).ascii(270, 'ö');
    assert.deepEqual([type, count, data.toString('hex')], [2, 3, 'c3b600']);
  });
});

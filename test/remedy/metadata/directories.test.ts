import assert from 'node:assert/strict';
import { bufferSource } from '../../../src/picture/header';
import { laidOut } from '../../../src/remedy/metadata/directories';
import { readTree } from '../../../src/remedy/metadata/exif-read';
import { type Field, FieldMaker } from '../../../src/remedy/metadata/fields';
import { type ExifTree, emptyTree } from '../../../src/remedy/metadata/tree';

function tree(bigEndian: boolean, more: Partial<ExifTree> = {}): ExifTree {
  const make = new FieldMaker(bigEndian);
  return {
    bigEndian,
    main: [make.ascii(315, 'Nobody'), make.short(300 - 1, 7), make.ascii(270, 'odd!')],
    exif: [make.rational(33434, [1, 125]), make.ascii(36867, '2020:01:02 03:04:05')],
    gps: [make.rational(2, [48, 1], [6, 1], [0, 1])],
    interop: [make.ascii(1, 'R98')],
    noteAt: null,
    ...more,
  };
}
const values = (fields: readonly Field[]) => fields.map(({ id, data }) => [id, data.toString('hex')]).sort();
const readBack = (of: ExifTree) => readTree(bufferSource(laidOut(of).bytes));

describe('laidOut', () => {
  it('is read back as it was, in either byte order', () => {
    for (const bigEndian of [false, true]) {
      const given = tree(bigEndian);
      const { tree: read, damaged, more } = readBack(given);
      assert.equal(read.bigEndian, bigEndian);
      for (const name of ['main', 'exif', 'gps', 'interop'] as const)
        assert.deepEqual(values(read[name]), values(given[name]), name);
      assert.deepEqual([damaged, more], [0, false]);
    }
  });

  it('sorts tags by number and places values at even offsets, as TIFF wants it', () => {
    const { bytes } = laidOut(tree(false));
    const ids = Array.from({ length: bytes.readUInt16LE(8) }, (_, i) => bytes.readUInt16LE(10 + i * 12));
    assert.deepEqual(
      ids,
      [...ids].sort((a, b) => a - b),
    );
    const offset = (id: number) => bytes.readUInt32LE(10 + ids.indexOf(id) * 12 + 8);
    assert.deepEqual(
      [315, 34665, 34853].map(id => offset(id) % 2),
      [0, 0, 0],
    );
  });

  it('leaves a maker’s note where it lay, whatever lies around', () => {
    const note: Field = { id: 0x927c, type: 7, count: 300, data: Buffer.alloc(300, 'note') };
    for (const noteAt of [8, 40, 151, 400, 4000]) {
      const given = tree(true, { noteAt, exif: [...tree(true).exif, note] });
      const { bytes } = laidOut(given);
      assert.deepEqual(bytes.subarray(noteAt, noteAt + 300), note.data, `at ${noteAt}`);
      const read = readBack(given).tree;
      assert.equal(read.noteAt, noteAt);
      assert.deepEqual(values(read.main), values(given.main));
      assert.deepEqual(values(read.gps), values(given.gps));
    }
  });

  it('says where the values of the first directory lie', () => {
    const { bytes, at } = laidOut(tree(false));
    assert.equal(bytes.toString('latin1', at.get(315), at.get(315)! + 6), 'Nobody');
    assert.equal(bytes.readUInt16LE(at.get(299)), 7);
  });

  it('makes no directory of what is empty', () => {
    assert.equal(laidOut(emptyTree()).bytes.length, 8 + 2 + 4);
  });
});

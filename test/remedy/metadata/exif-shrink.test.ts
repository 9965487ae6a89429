import assert from 'node:assert/strict';
import { laidOut } from '../../../src/remedy/metadata/directories';
import { shrunk } from '../../../src/remedy/metadata/exif-shrink';
import { FieldMaker } from '../../../src/remedy/metadata/fields';
import { type ExifTree, emptyTree } from '../../../src/remedy/metadata/tree';

const make = new FieldMaker(false);
const tree = (noteAt: number | null, noteLength = 100): ExifTree => ({
  ...emptyTree(),
  main: [make.ascii(315, 'Nobody'), make.bytes(60_001, Buffer.alloc(5000))],
  exif: [make.bytes(0x927c, Buffer.alloc(noteLength)), make.bytes(60_002, Buffer.alloc(3000))],
  noteAt,
});

describe('shrunk', () => {
  it('changes nothing that fits', () => {
    const told: string[] = [];
    const given = tree(2000);
    assert.equal(shrunk(given, 65_000, told), given);
    assert.deepEqual(told, []);
  });

  it('lets the maker’s note go where its place is beyond the block, and tells it', () => {
    for (const noteAt of [0, 64_950, 0xfffffff0]) {
      const told: string[] = [];
      const { exif, main, noteAt: at } = shrunk(tree(noteAt), 65_000, told);
      assert.deepEqual([exif.length, main.length, at], [1, 2, null]);
      assert.match(told.join(), /^The camera maker's own notes could not be carried/);
    }
  });

  it('lets the note go first, then the longest tags, until the rest fits', () => {
    const told: string[] = [];
    const fit = shrunk(tree(4000), 4000, told);
    assert.ok(laidOut(fit).bytes.length <= 4000);
    assert.deepEqual(
      [fit.main, fit.exif].map(fields => fields.map(({ id }) => id)),
      [[315], [60_002]],
    );
    assert.equal(told.length, 2);
    assert.match(told[1], /One EXIF tag is too long for this format .*60001/);
  });
});

import assert from 'node:assert/strict';
import { bufferSource } from '../../../src/picture/header';
import { fractionOf, numbersOf, readTree } from '../../../src/remedy/metadata/exif-read';
import { FieldMaker } from '../../../src/remedy/metadata/fields';
import { greyPage, LONG, LONG8, RATIONAL, SHORT, tiffBytes, UNDEFINED } from '../../picture/bytes';

const read = (bytes: Buffer) => readTree(bufferSource(bytes));

describe('readTree', () => {
  it('keeps tags that say something, and none that describe the old pixels', () => {
    const page = greyPage([
      [315, 2, [65, 66, 0]],
      [282, RATIONAL, [300, 1]],
      [34675, UNDEFINED, [1, 2, 3, 4, 5]],
      [700, 1, [60, 97, 47, 62, 32]],
      [60_001, SHORT, [9]],
    ]);
    const { tree, all } = read(tiffBytes([page]));
    assert.deepEqual(
      tree.main.map(({ id }) => id),
      [315, 282, 60_001],
    );
    assert.equal(all.get(700)?.data.toString(), '<a/> ');
    assert.equal(all.get(34675)?.data.length, 0);
  });

  it('knows of previews and of raw pictures', () => {
    assert.equal(read(tiffBytes([greyPage(), greyPage()])).more, true);
    assert.equal(read(tiffBytes([greyPage([[330, LONG, [8]]])])).more, true);
    const plain = read(tiffBytes([greyPage()]));
    assert.deepEqual([plain.more, plain.raw], [false, false]);
    const raw = read(tiffBytes([greyPage([[50706, 1, [1, 4, 0, 0]]])]));
    assert.deepEqual([raw.raw, raw.tree.main], [true, []]);
  });

  it('reads BigTIFF but for values that no other TIFF holds', () => {
    const page = greyPage([
      [315, 2, [65, 66, 67, 68, 69, 0]],
      [60_001, LONG8, [5]],
    ]);
    const { tree, damaged } = read(tiffBytes([page], { big: true }));
    assert.deepEqual([tree.main.map(({ id }) => id), damaged], [[315], 1]);
  });

  it('passes over tags without values', () => {
    const { tree, damaged } = read(tiffBytes([greyPage([[315, 2, []]])]));
    assert.deepEqual([tree.main, damaged], [[], 0]);
  });

  it('throws where there is no directory at all', () => {
    assert.throws(() => read(Buffer.from('no TIFF at all')), { name: 'UnreadableError' });
  });
});

describe('values of a field', () => {
  const make = new FieldMaker(true);
  it('are numbers of whole types', () => {
    assert.deepEqual(numbersOf(make.short(1, 1, 65_535), true), [1, 65_535]);
    assert.deepEqual(numbersOf(make.long(1, 0xffffffff), true), [0xffffffff]);
    assert.deepEqual(numbersOf(make.ascii(1, 'a'), true), []);
  });

  it('are a fraction where they are above zero', () => {
    assert.deepEqual(fractionOf(make.rational(1, [3000, 10]), true), [3000, 10]);
    assert.deepEqual(fractionOf(make.short(1, 300), true), [300, 1]);
    for (const field of [make.rational(1, [0, 1]), make.rational(1, [1, 0]), make.ascii(1, 'a'), undefined])
      assert.equal(fractionOf(field, true), null);
  });
});

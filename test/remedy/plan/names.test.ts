import assert from 'node:assert/strict';
import { mirroredNames, originalName } from '../../../src/book/original-names';
import { folded, resultName } from '../../../src/remedy/plan/names';
import type { RemedyFormat } from '../../../src/shared/remedy';

describe('names of results', () => {
  const beside: [string, RemedyFormat, string][] = [
    ['plate.jpg', 'jpeg', 'plate.rgb-neutral.jpg'],
    ['plate.JPEG', 'jpeg', 'plate.rgb-neutral.JPEG'],
    ['plate.tiff', 'tiff', 'plate.rgb-neutral.tiff'],
    ['plate.jpg', 'png', 'plate.jpg.rgb-neutral.png'],
    ['plate.png', 'png', 'plate.rgb-neutral.png'],
    ['plate.webp', 'tiff', 'plate.webp.rgb-neutral.tif'],
    // a PNG that is called otherwise
    ['plate.jpg', 'tiff', 'plate.jpg.rgb-neutral.tif'],
    ['plate', 'tiff', 'plate.rgb-neutral.tif'],
    ['plate.v2.jpg', 'jpeg', 'plate.v2.rgb-neutral.jpg'],
    ['plate.jpg.png', 'png', 'plate.jpg.png.rgb-neutral.png'],
  ];
  for (const [name, format, expected] of beside)
    it(`${name} as ${format}: ${expected}`, () =>
      assert.equal(resultName(name, format, 'rgb-neutral'), expected));

  it('are the picture’s own in a folder apart', () => {
    assert.equal(resultName('plate.jpg', 'jpeg', null), 'plate.jpg');
    assert.equal(resultName('plate.png', 'tiff', null), 'plate.png.tif');
    assert.equal(resultName('plate.jpg.tif', 'tiff', null), 'plate.jpg.tif');
  });

  it('never meet beside the pictures, and say everywhere what they can be made of: every name that a folder can hold, in every format', () => {
    const stems = ['a', 'b', 'a.b', 'a.jpg', 'a.png', 'a.png.tif', 'a.rgb-neutral', 'a.jpg.rgb-neutral'];
    const names = stems.flatMap(stem =>
      ['jpg', 'jpeg', 'png', 'tif', 'tiff', 'webp'].map(ext => `${stem}.${ext}`),
    );
    for (const encoding of ['rgb-neutral', null] as const)
      for (const format of ['jpeg', 'png', 'tiff'] as const) {
        const results = names.map(name => resultName(name, format, encoding));
        if (encoding) assert.equal(new Set(results).size, names.length);
        for (const [at, result] of results.entries())
          if (encoding) assert.equal(originalName(`x/${result}`), `x/${names[at]}`);
          else assert.ok(mirroredNames(result).includes(names[at]), result);
      }
  });

  it('say which picture they were made of', () => {
    assert.equal(originalName('x.y/plate.jpg'), null);
    assert.deepEqual(mirroredNames('x.y/plate.jpg.png'), ['x.y/plate.jpg', 'x.y/plate.jpg.png']);
  });

  it('are the same to a file system that knows no case and writes umlauts another way', () => {
    assert.equal(folded('/Büch/A.JPG'), folded('/bu\u0308ch/a.jpg'));
    assert.notEqual(folded('/a.jpg'), folded('/b.jpg'));
  });
});

import assert from 'node:assert/strict';
import { printedScale, uprightBox, whereabouts } from '../../src/rules/printed';
import { type PictureOptions, picture } from './support/pictures';

const scale = (options: PictureOptions) => printedScale(picture('rgb-neutral', options));

/** The picture is 3000 x 2000 pixels. */
describe('the printed size', () => {
  it('is the placed one; of two edges the one that is stretched more', () => {
    assert.deepEqual(scale({ placed: { width: 300 } }), { perMm: 10, from: 'placed' });
    assert.deepEqual(scale({ placed: { width: 300, height: 250 } }), { perMm: 8, from: 'placed' });
  });
  it('goes by the picture as it is seen', () =>
    assert.deepEqual(scale({ placed: { width: 200 }, facts: { orientation: 6 } }), {
      perMm: 10,
      from: 'placed',
    }));
  it("else the file's own ppi, if a page can hold that", () =>
    assert.deepEqual(scale({ facts: { ppi: { x: 254, y: 254 } } }), { perMm: 10, from: 'ppi' }));
  it('else a full page: 72 ppi would be more than a metre', () =>
    assert.deepEqual(scale({ facts: { ppi: { x: 72, y: 72 } } }), { perMm: 10, from: 'assumed' }));
});

/**
 * EXIF 2.32, Orientation: where row 0 and column 0 of the stored picture lie. Of a 3000 x 2000 raster a box of 30 x 20
 * at its very corner (row 0, column 0) is seen:
 */
describe('a box as it is seen', () => {
  const corners: [number, string, string][] = [
    [1, 'top left', '0,0 30x20'],
    [2, 'top right', '2970,0 30x20'],
    [3, 'bottom right', '2970,1980 30x20'],
    [4, 'bottom left', '0,1980 30x20'],
    [5, 'left top', '0,0 20x30'],
    [6, 'right top', '1980,0 20x30'],
    [7, 'right bottom', '1980,2970 20x30'],
    [8, 'left bottom', '0,2970 20x30'],
  ];
  for (const [orientation, name, expected] of corners)
    it(`lies at the ${name} for orientation ${orientation}`, () => {
      const { facts } = picture('rgb-neutral', { facts: { orientation } });
      const { x, y, width, height } = uprightBox({ x: 0, y: 0, width: 30, height: 20 }, facts);
      assert.equal(`${x},${y} ${width}x${height}`, expected);
    });

  it('is told in words, by thirds', () => {
    const size = { width: 300, height: 300 };
    const at = (x: number, y: number) => whereabouts({ x, y, width: 2, height: 2 }, size);
    assert.equal(at(0, 0), 'at the upper left');
    assert.equal(at(150, 10), 'in the upper middle');
    assert.equal(at(298, 150), 'at the right, half-way up');
    assert.equal(at(150, 150), 'in the centre');
    assert.equal(at(298, 298), 'at the lower right');
  });
});

import assert from 'node:assert/strict';
import { placesOf } from '../../../src/picture/judge/places';
import { PlainBlocks } from '../../../src/picture/pass/blocks';

/** Places on a picture of 160 x 100 pixels, by the distance of its 20 x 13 blocks. */
const places = (distance: (x: number, y: number) => number) =>
  placesOf(
    new PlainBlocks(160, 100, 3),
    Float32Array.from({ length: 260 }, (_, i) => distance(i % 20, Math.floor(i / 20))),
    2,
    160,
    100,
  );

describe('places of left-over colour', () => {
  it('are boxes in pixels around touching blocks, corners included', () =>
    assert.deepEqual(
      places((x, y) => (x === y && x >= 2 && x <= 7 ? 3 : 0)),
      [{ x: 16, y: 16, width: 48, height: 48, max: 3 }],
    ));
  it('end at the edge of the picture', () =>
    assert.deepEqual(
      places((x, y) => (y > 10 && x > 15 ? 5 : 0)),
      [{ x: 128, y: 88, width: 32, height: 12, max: 5 }],
    ));
  it('come strongest first, at most sixteen of them', () => {
    const found = places((x, y) => (x % 2 === 0 && y % 2 === 0 ? 10 + x : 0));
    assert.equal(found.length, 16);
    assert.ok(found.every((place, i) => i === 0 || place.max <= found[i - 1].max));
    assert.deepEqual([found[0].max, found[0].x], [28, 144]);
  });
  it("as small as a codec's unit must stray twice as far", () => {
    assert.equal(places((x, y) => (x < 2 && y < 2 ? 3 : 0)).length, 0);
    assert.equal(places((x, y) => (x < 2 && y < 2 ? 5 : 0)).length, 1);
    assert.equal(places((x, y) => (x < 3 && y < 2 ? 3 : 0)).length, 1);
  });
});

import assert from 'node:assert/strict';
import { clippedOf } from '../../../src/picture/judge/clipped';
import { PlainBlocks } from '../../../src/picture/pass/blocks';
import { BLACK, WHITE } from '../../../src/picture/pass/tally';

/** A picture of 20 x 20 blocks by a value for each: 255 is plain white, 0 plain black. */
function grey(value: (x: number, y: number) => number) {
  const blocks = new PlainBlocks(160, 160, 1);
  blocks.count.fill(64);
  for (let i = 0; i < 400; i++) {
    const v = value(i % 20, Math.floor(i / 20));
    blocks.kinds[i] = v === 255 ? WHITE : v === 0 ? BLACK : 0;
  }
  return clippedOf(blocks);
}

describe('what is cut off', () => {
  it('is whole blocks of plain white and plain black', () => {
    const { lights, shadows } = grey((x, y) => (y >= 10 ? 128 : x < 5 ? 255 : x < 15 ? 100 : 0));
    assert.deepEqual([lights, shadows], [0.125, 0.125]);
  });
  it('is not a block with a light smaller than itself', () => assert.equal(grey(() => 200).lights, 0));
  it('leaves out the frame of a film, perforations and all', () => {
    const edge = (i: number) => i < 2 || i > 17;
    const { lights, shadows } = grey((x, y) => (edge(y) ? (x % 4 === 1 ? 255 : 0) : edge(x) ? 0 : 128));
    assert.deepEqual([lights, shadows], [0, 0]);
  });
  it('counts a sky that only reaches the upper edge', () =>
    assert.equal(grey((_, y) => (y < 2 ? 255 : 128)).lights, 0.1));
  it('leaves out an even frame of any width, white or black, of all sides or of two', () => {
    for (const v of [0, 255])
      for (const width of [1, 3, 6, 9]) {
        const edge = (i: number) => i < width || i >= 20 - width;
        const inside = (x: number) => (x === 9 ? 255 : 128);
        const found = [
          grey((x, y) => (edge(x) || edge(y) ? v : 128)),
          grey((_, y) => (edge(y) ? v : 128)),
          grey(x => (edge(x) ? v : 128)),
        ];
        for (const { lights, shadows } of found)
          assert.deepEqual([lights, shadows], [0, 0], `${v}, ${width}`);
        // what is cut off within it is told, as a share of the picture
        const { lights } = grey((x, y) => (edge(y) ? v : inside(x)));
        assert.ok(Math.abs(lights - 1 / 20) < 1e-9, `${lights}`);
      }
  });
  it('leaves out a frame that is wider on one side', () => {
    const { lights } = grey((x, y) => (x < 2 || x > 16 || y < 1 || y > 10 ? 255 : 100));
    assert.equal(lights, 0);
  });
  it('counts a bright sky and black ground that reach three edges each', () => {
    const { lights, shadows } = grey((x, y) => (y < 8 ? 255 : y > 15 && x > 4 ? 0 : 128));
    assert.deepEqual([lights, shadows], [0.4, 0.15]);
  });
  it('counts plain patches of both kinds far from the edge', () => {
    const { lights, shadows } = grey((x, y) => (y < 8 || y > 11 ? (x % 2 ? 255 : 0) : 128));
    assert.ok(lights > 0.1 && shadows > 0.1);
  });
  it('is nothing where all is plain: there is no picture', () => {
    for (const v of [0, 255]) assert.deepEqual(Object.values(grey(() => v)), [0, 0]);
  });

  it('is nothing where no pixel counts', () => {
    const { lights, shadows } = clippedOf(new PlainBlocks(8, 8, 1));
    assert.deepEqual([lights, shadows], [0, 0]);
  });
});

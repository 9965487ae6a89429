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
  it('counts black above and below that is more than a frame', () =>
    assert.equal(grey((_, y) => (y < 6 || y > 13 ? 0 : 128)).shadows, 0.6));
  it('counts a picture that is plain all over', () => assert.equal(grey(() => 255).lights, 1));

  it('is nothing where no pixel counts', () => {
    const { lights, shadows } = clippedOf(new PlainBlocks(8, 8, 1));
    assert.deepEqual([lights, shadows], [0, 0]);
  });
});

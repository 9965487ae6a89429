import assert from 'node:assert/strict';
import { lightnessOfGreen, straysOf } from '../../../src/picture/judge/strays';
import { ToneTable } from '../../../src/picture/judge/tone-line';
import type { Blocks } from '../../../src/picture/pass/tally';
import { random } from '../pass/random';
import { AS_LAB, labCells, labPicture } from './cells';

/** Strays of a Lab picture, with each block's range of G where given. */
function strays({ tally, lab }: ReturnType<typeof labPicture>, greens?: (block: number) => [number, number]) {
  const table = new ToneTable();
  table.add(lab, tally.cells.length, tally.cells.count);
  const line = table.line();
  const { blocks } = tally;
  if (!greens) return straysOf(blocks, AS_LAB, line, null);
  const ranged: Blocks = {
    ...blocks,
    columns: blocks.columns,
    count: blocks.count,
    channels: 3,
    mean: (block, c) => blocks.mean(block, c),
    read: (first, n, out) => blocks.read(first, n, out),
    greens: Uint8Array.from({ length: blocks.count.length * 2 }, (_, i) => greens(i >> 1)[i & 1]),
  };
  return straysOf(
    ranged,
    AS_LAB,
    line,
    Float64Array.from({ length: 256 }, (_, g) => (g / 255) * 100),
  );
}

/** Dark to light, brownish in the middle, as sepia is. */
const sepia = (L: number): [number, number, number] => [L, 0, 20 - 20 * ((L - 50) / 50) ** 2];

describe('strays', () => {
  it("are measured from the tone at the block's own lightness", () => {
    const { distance, limit, zone } = strays(
      labPicture(50, 50, (x, y) => (x === 7 && y === 9 ? [50, 3, 24] : sepia((x * 50 + y) % 101))),
    );
    assert.equal(limit, 2);
    assert.equal(zone[9 * 50 + 7], 8);
    assert.ok(Math.abs(distance[9 * 50 + 7] - 5) < 0.3, `${distance[9 * 50 + 7]}`);
    assert.ok(distance.every((r, i) => i === 9 * 50 + 7 || r < 0.6));
  });

  it('are not blocks that mix the darkest and the lightest tones along an edge', () => {
    const picture = labPicture(50, 50, (x, y) =>
      x === 7 && y === 9 ? [50, 0, 2] : sepia((x * 50 + y) % 101),
    );
    const edge = 9 * 50 + 7;
    assert.ok(strays(picture, () => [125, 130]).distance[edge] > 15);
    assert.ok(strays(picture, block => (block === edge ? [0, 255] : [125, 130])).distance[edge] < 0.1);
  });

  it('of a grainy picture begin farther out, but no farther than 4', () => {
    const next = random(21);
    const grain = (sd: number) => () => {
      const r = sd * Math.sqrt(-2 * Math.log(1 - next()));
      const angle = 2 * Math.PI * next();
      return [50 + 30 * next(), r * Math.cos(angle), r * Math.sin(angle)] as [number, number, number];
    };
    const { limit } = strays(labPicture(100, 100, grain(0.6)));
    assert.ok(limit > 2.7 && limit < 3.3, `${limit}`);
    assert.equal(strays(labPicture(100, 100, grain(3))).limit, 4);
  });

  it('know the lightness of a green by the pixels that have it', () => {
    const { cells, lab } = labCells([
      [40, 100, 0, 1],
      [44, 100, 0, 3],
      [90, 200, 0, 1],
    ]);
    const table = lightnessOfGreen(cells, lab);
    assert.deepEqual([table[0], table[100], table[150], table[200], table[255]], [0, 43, 43, 90, 90]);
  });
});

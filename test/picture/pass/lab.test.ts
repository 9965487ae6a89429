import assert from 'node:assert/strict';
import { labTally } from '../../../src/picture/pass/lab';
import { BLACK, WHITE } from '../../../src/picture/pass/tally';
import type { Samples } from '../../../src/picture/types';

/** A Lab picture of one row, by L*, a*, b* and opacity (0-1). */
function row(pixels: number[][], alpha = false): Samples {
  const step = alpha ? 4 : 3;
  const units = [327.67, 256, 256, 32767];
  const data = Int16Array.from({ length: pixels.length * step }, (_, i) =>
    Math.round(pixels[Math.floor(i / step)][i % step] * units[i % step]),
  );
  return { width: pixels.length, height: 1, channels: 3, alpha, space: 'lab', data };
}

const near = (found: number, wanted: number, within: number) =>
  assert.ok(Math.abs(found - wanted) <= within, `${found}, not ${wanted}`);

describe('the pass over Lab pictures', () => {
  it('takes levels and block means exactly, in natural units', () => {
    const { levels, blocks, pixels } = labTally(
      row([
        [20, -3, 40],
        [60, 5, -40],
      ]),
    );
    assert.equal(pixels, 2);
    const wanted = [
      [20, 60, 40],
      [-3, 5, 1],
      [-40, 40, 0],
    ];
    wanted.forEach(([min, max, mean], c) => {
      near(levels[c].min, min, 0.002);
      near(levels[c].max, max, 0.002);
      near(levels[c].mean, mean, 0.002);
      near(blocks.mean(0, c), mean, 0.002);
    });
  });

  it('tells values apart finely near neutral, coarsely beyond, in either direction', () => {
    const values = [
      [50, 0.5, -0.5],
      [50, -15.5, 15.5],
      [50, 60, -100],
      [50, -100, 90],
    ];
    const { cells } = labTally(row(values));
    assert.equal(cells.length, 4);
    for (const [i, value] of values.entries())
      for (const [c, wanted] of value.entries()) {
        const far = Math.abs(value[1]) >= 16 || Math.abs(value[2]) >= 16;
        near(cells.values[i * 3 + c], wanted, c === 0 ? 0.2 : far ? 2 : 0.25);
      }
  });

  it('finds blocks of plain white and black by L*', () => {
    const kind = (L: number) => labTally(row([[L, 9, 0]])).blocks.kinds[0];
    assert.deepEqual([kind(100), kind(99), kind(50), kind(0.3)], [WHITE, 0, 0, BLACK]);
  });

  it('lays soft pixels on white paper and leaves transparent ones out', () => {
    const tally = labTally(
      row(
        [
          [0, 20, -20, 0.5],
          [30, 50, 50, 0],
        ],
        true,
      ),
    );
    assert.deepEqual([tally.pixels, tally.leftOut, tally.partial], [1, 1, 1]);
    near(tally.cells.values[0], 50, 0.3);
    near(tally.cells.values[1], 10, 0.3);
    near(tally.levels[1].max, 20, 0.01);
  });
});

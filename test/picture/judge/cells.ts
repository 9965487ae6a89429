// no-unit-test: makes cells and blocks for the tests beside it
import { PlainBlocks } from '../../../src/picture/pass/blocks';
import type { Cells, Tally } from '../../../src/picture/pass/tally';

/** Lab of cells and how many pixels each stands for. */
export function labCells(rows: [L: number, a: number, b: number, count: number][]) {
  const cells: Cells = {
    channels: 3,
    length: rows.length,
    count: Float64Array.from(rows, row => row[3]),
    values: Float32Array.from(rows.flatMap(row => row.slice(0, 3))),
  };
  return { cells, lab: cells.values };
}

/** A meaning for values that are Lab already. */
export const AS_LAB = {
  lab: (values: Float32Array, n: number, out: Float32Array) => out.set(values.subarray(0, n * 3)),
};

/** A picture in Lab, given block by block: every pixel of a block alike. */
export function labPicture(
  columns: number,
  rows: number,
  colour: (x: number, y: number) => [number, number, number],
) {
  const blocks = new PlainBlocks(columns * 8, rows * 8, 3);
  const cells: [number, number, number, number][] = [];
  for (let i = 0; i < columns * rows; i++) {
    const lab = colour(i % columns, Math.floor(i / columns));
    blocks.count[i] = 64;
    blocks.means.set(lab, i * 3);
    cells.push([...lab, 64]);
  }
  const tally: Tally = {
    levels: [],
    pixels: columns * rows * 64,
    leftOut: 0,
    partial: 0,
    spread: 255,
    inkTotal: 0,
    cells: labCells(cells).cells,
    blocks,
  };
  return { tally, lab: tally.cells.values, size: { width: columns * 8, height: rows * 8 } };
}

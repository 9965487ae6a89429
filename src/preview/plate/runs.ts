import type { Marks } from '../../shared/look';

/** Marked cells of a row of the grid: from `from` up to `to`. */
export interface Run {
  row: number;
  from: number;
  to: number;
}

/** Marked cells as runs along the rows. */
export function runsOf(
  { width, height }: Pick<Marks, 'width' | 'height'>,
  marked: (cell: number) => boolean,
): Run[] {
  const runs: Run[] = [];
  for (let row = 0, cell = 0; row < height; row++) {
    let from = -1;
    for (let column = 0; column < width; column++, cell++) {
      if (marked(cell)) {
        if (from < 0) from = column;
      } else if (from >= 0) {
        runs.push({ row, from, to: column });
        from = -1;
      }
    }
    if (from >= 0) runs.push({ row, from, to: width });
  }
  return runs;
}

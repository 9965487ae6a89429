import { BLACK, type Blocks, WHITE } from '../pass/tally';

/** A row or column of a film's edge or a scan's margin: plain nearly all along (perforations, a number on the film). */
const FRAME_PLAIN = 0.9;
/** A frame is no deeper than this share of the picture on any side; beyond it is the picture. */
const FRAME_DEPTH = 0.15;

/**
 * Shares (0-1) of the picture that are plain white and plain black in the stored values, by whole 8 x 8 blocks: specular
 * lights and grain are smaller. A frame, plain strips on opposite sides, is left out of the picture altogether.
 */
export function clippedOf(blocks: Blocks): { lights: number; shadows: number } {
  const { columns, rows, count, kinds } = blocks;
  const [top, bottom] = frame(kinds, rows, columns, columns, 1);
  const [left, right] = frame(kinds, columns, rows, 1, columns);
  let [all, lights, shadows] = [0, 0, 0];
  for (let y = top; y < rows - bottom; y++)
    for (let block = y * columns + left; block < (y + 1) * columns - right; block++) {
      all += count[block];
      if (kinds[block] === WHITE) lights += count[block];
      else if (kinds[block] === BLACK) shadows += count[block];
    }
  return { lights: lights / Math.max(1, all), shadows: shadows / Math.max(1, all) };
}

/**
 * How many lines of blocks at the start and at the end are frame: none unless both ends have some. A line's blocks are
 * `length` apart by `step`, lines by `next`.
 */
function frame(
  kinds: Uint8Array,
  lines: number,
  length: number,
  next: number,
  step: number,
): [number, number] {
  const most = Math.floor(lines * FRAME_DEPTH);
  const isPlain = (line: number) => {
    let n = 0;
    for (let i = 0; i < length; i++) if (kinds[line * next + i * step] !== 0) n++;
    return n >= FRAME_PLAIN * length;
  };
  let start = 0;
  while (start <= most && isPlain(start)) start++;
  let end = 0;
  while (end <= most && isPlain(lines - 1 - end)) end++;
  return start > 0 && end > 0 && start <= most && end <= most ? [start, end] : [0, 0];
}

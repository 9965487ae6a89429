import { BLACK, type Blocks, WHITE } from '../pass/tally';

/** A line of blocks of a frame is plain nearly all along: a film's edge has perforations and numbers on it. */
const FRAME_PLAIN = 0.9;
/** A film's edge is no deeper than this share of the picture; a frame of one even white or black may be. */
const FILM_DEPTH = 0.15;

/**
 * Shares (0-1) of the picture that are plain white and plain black in the stored values, by whole 8 x 8 blocks: specular
 * lights and grain are smaller. A frame, plain strips on opposite sides, is left out of the picture altogether, and so is
 * what is plain all over: nothing is cut off where there is no picture.
 */
export function clippedOf(blocks: Blocks): { lights: number; shadows: number } {
  const { columns, count, kinds } = blocks;
  const { top, bottom, left, right } = withinFrame(blocks);
  let [all, lights, shadows] = [0, 0, 0];
  for (let y = top; y < bottom; y++)
    for (let block = y * columns + left; block < y * columns + right; block++) {
      all += count[block];
      if (kinds[block] === WHITE) lights += count[block];
      else if (kinds[block] === BLACK) shadows += count[block];
    }
  return { lights: lights / Math.max(1, all), shadows: shadows / Math.max(1, all) };
}

/** The rows (`top` up to `bottom`) and columns of blocks that are picture: all but a frame on opposite sides. */
export function withinFrame(blocks: Blocks): { top: number; bottom: number; left: number; right: number } {
  const { columns, rows } = blocks;
  const [top, below] = frame(blocks, { lines: rows, next: columns, from: 0, to: columns, step: 1 });
  const between = { from: top, to: rows - below };
  const [left, beyond] = frame(blocks, { lines: columns, next: 1, ...between, step: columns });
  return { top, bottom: rows - below, left, right: columns - beyond };
}

/** Rows or columns of blocks: each goes from `from` to `to`, by `step`; the lines lie `next` apart. */
interface Lines {
  lines: number;
  next: number;
  from: number;
  to: number;
  step: number;
}

/** How many lines at the start and at the end are frame: none unless both ends have some. */
function frame(blocks: Blocks, across: Lines): [start: number, end: number] {
  const { lines } = across;
  const film = lines * FILM_DEPTH;
  const isFrame = (line: number, depth: number) => {
    const { plain, even } = evenness(blocks, across, line);
    return (depth < film ? plain : even) >= FRAME_PLAIN;
  };
  let start = 0;
  while (start < lines && isFrame(start, start)) start++;
  let end = 0;
  while (end < lines - start && isFrame(lines - 1 - end, end)) end++;
  if (start === lines) return [start, 0];
  return start > 0 && end > 0 ? [start, end] : [0, 0];
}

/** Shares of a line's blocks that are plain, and plain in one way; all of them where no pixel counts. */
function evenness({ count, kinds }: Blocks, { next, from, to, step }: Lines, line: number) {
  let [all, white, black] = [0, 0, 0];
  for (let i = from; i < to; i++) {
    const block = line * next + i * step;
    if (count[block] === 0) continue;
    all++;
    if (kinds[block] === WHITE) white++;
    else if (kinds[block] === BLACK) black++;
  }
  if (all === 0) return { plain: 1, even: 1 };
  return { plain: (white + black) / all, even: Math.max(white, black) / all };
}

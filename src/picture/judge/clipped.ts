import type { Space } from '../../shared/picture';
import type { Blocks } from '../pass/tally';

/** What a block is: neither, plain white, plain black. */
const NEITHER = 0;
const WHITE = 1;
const BLACK = 2;

/** Of 255: a codec leaves so much beside a hard edge of what was cut off. */
const NEARLY = 1;
/** A row or column of a film's edge or a scan's margin: plain nearly all along (perforations, a number on the film). */
const FRAME_PLAIN = 0.9;
/** A frame is no deeper than this share of the picture on any side; beyond it is the picture. */
const FRAME_DEPTH = 0.15;

/**
 * Shares (0-1) of the picture that are plain white and plain black in the stored values, by whole 8 x 8 blocks: specular
 * lights and grain are smaller. A frame, plain strips on opposite sides, is left out of the picture altogether.
 */
export function clippedOf(blocks: Blocks, space: Space): { lights: number; shadows: number } {
  const { columns, rows, count } = blocks;
  const kinds = new Uint8Array(count.length);
  for (let block = 0; block < kinds.length; block++)
    if (count[block] > 0) kinds[block] = kindOf(blocks, block, space);
  const [top, bottom] = frame(kinds, rows, columns, columns, 1);
  const [left, right] = frame(kinds, columns, rows, 1, columns);
  const pixels = [0, 0, 0];
  for (let y = top; y < rows - bottom; y++)
    for (let block = y * columns + left; block < (y + 1) * columns - right; block++)
      pixels[kinds[block]] += count[block];
  const all = pixels[NEITHER] + pixels[WHITE] + pixels[BLACK] || 1;
  return { lights: pixels[WHITE] / all, shadows: pixels[BLACK] / all };
}

function kindOf(blocks: Blocks, block: number, space: Space): number {
  const first = blocks.mean(block, 0);
  if (space === 'lab') return plain((first / 100) * 255);
  if (space === 'cmyk') {
    const black = blocks.mean(block, 3);
    if (black >= 255 - NEARLY) return BLACK;
    return Math.max(first, blocks.mean(block, 1), blocks.mean(block, 2), black) <= NEARLY ? WHITE : NEITHER;
  }
  const kind = plain(first);
  if (kind === NEITHER) return NEITHER;
  for (let c = 1; c < blocks.channels; c++) if (plain(blocks.mean(block, c)) !== kind) return NEITHER;
  return kind;
}

/** Of a value that grows with lightness, 0-255. */
function plain(value: number): number {
  if (value >= 255 - NEARLY) return WHITE;
  return value <= NEARLY ? BLACK : NEITHER;
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
    for (let i = 0; i < length; i++) if (kinds[line * next + i * step] !== NEITHER) n++;
    return n >= FRAME_PLAIN * length;
  };
  let start = 0;
  while (start <= most && isPlain(start)) start++;
  let end = 0;
  while (end <= most && isPlain(lines - 1 - end)) end++;
  return start > 0 && end > 0 && start <= most && end <= most ? [start, end] : [0, 0];
}

import { MARK, type Marks, TRANSPARENT } from '../../shared/look';
import { judgeChroma } from '../judge/chroma';
import { clippedOf, withinFrame } from '../judge/clipped';
import { tallyOf } from '../pass/pass';
import { BLOCK, type Blocks, WHITE } from '../pass/tally';
import type { Samples } from '../types';
import type { OpenPage } from './kept';
import { seenSize, storedPoint } from './upright';
import { Values } from './values';

/** A grid over the stored raster. */
interface Grid {
  columns: number;
  rows: number;
}

const MOST_INK = 400;

/**
 * What can be marked on a picture, from all of its stored values, on a grid of at most `longEdge` cells; by whole 8 x 8
 * blocks where it is judged so.
 */
export function marksOf({ header, samples, meaning }: OpenPage, longEdge: number): Marks {
  const { width, height } = samples;
  const scale = Math.min(1, longEdge / Math.max(width, height));
  const grid = {
    columns: Math.max(1, Math.round(width * scale)),
    rows: Math.max(1, Math.round(height * scale)),
  };
  const { lightness, ink, inkShares } = counted({ header, samples, meaning }, grid);
  const tally = tallyOf(samples);
  const lab = new Float32Array(tally.cells.length * 3);
  meaning.lab(tally.cells.values, tally.cells.length, lab);
  const { strays, facts } = judgeChroma(tally, lab, meaning, samples);
  const strayed = (block: number) => strays !== null && strays.distance[block] > strays.limit;
  const kinds = kindsOf(tally.blocks, strayed, samples, grid);
  const turned = { width: grid.columns, height: grid.rows, orientation: header.orientation };
  const seen = seenSize(turned);
  const upright = <T extends Uint8Array | Uint16Array>(cells: T): T => {
    const out = cells.slice() as T;
    for (let y = 0, to = 0; y < seen.height; y++)
      for (let x = 0; x < seen.width; x++, to++) {
        const [column, row] = storedPoint(x, y, turned);
        out[to] = cells[row * grid.columns + column];
      }
    return out;
  };
  return {
    ...seen,
    lightness: upright(lightness),
    kinds: upright(kinds),
    ink: ink && upright(ink),
    shares: { colour: facts.share, lights: clippedOf(tally.blocks).lights, ink: inkShares },
  };
}

/** Pixel by pixel: mean lightness and most ink of each cell. */
function counted({ samples, meaning }: OpenPage, { columns, rows }: Grid) {
  const { width, height, channels, space } = samples;
  const cells = columns * rows;
  const sum = new Float64Array(cells);
  const seen = new Uint32Array(cells);
  const ink = space === 'cmyk' ? new Uint16Array(cells) : null;
  const totals = new Float64Array(MOST_INK + 1);
  const values = new Values(samples);
  const line = new Float32Array(width * channels);
  const lab = new Float32Array(width * 3);
  for (let y = 0; y < height; y++) {
    values.read(y * width, width, line);
    meaning.lab(line, width, lab);
    const first = Math.floor((y * rows) / height) * columns;
    for (let x = 0; x < width; x++) {
      if (samples.alpha && values.opacity(y * width + x) === 0) continue;
      const cell = first + Math.floor((x * columns) / width);
      sum[cell] += lab[x * 3];
      seen[cell]++;
      if (!ink) continue;
      const at = x * 4;
      const total = Math.ceil(((line[at] + line[at + 1] + line[at + 2] + line[at + 3]) / 255) * 100 - 1e-3);
      totals[total]++;
      if (total > ink[cell]) ink[cell] = total;
    }
  }
  const lightness = Uint16Array.from(sum, (L, cell) =>
    seen[cell] ? Math.max(0, Math.round((100 * L) / seen[cell])) : TRANSPARENT,
  );
  const pixels = Math.max(
    1,
    totals.reduce((all, n) => all + n, 0),
  );
  return { lightness, ink, inkShares: ink && Array.from(totals, n => n / pixels) };
}

/** What is judged by blocks: the block in the middle of each cell. */
function kindsOf(
  blocks: Blocks,
  strayed: (block: number) => boolean,
  { width, height }: Samples,
  { columns, rows }: Grid,
): Uint8Array {
  const kinds = new Uint8Array(columns * rows);
  const frame = withinFrame(blocks);
  for (let row = 0, cell = 0; row < rows; row++) {
    const y = Math.floor(((row + 0.5) * height) / rows / BLOCK);
    for (let column = 0; column < columns; column++, cell++) {
      const x = Math.floor(((column + 0.5) * width) / columns / BLOCK);
      const block = y * blocks.columns + x;
      if (blocks.count[block] === 0) continue;
      const inside = y >= frame.top && y < frame.bottom && x >= frame.left && x < frame.right;
      if (strayed(block)) kinds[cell] |= MARK.colour;
      if (inside && blocks.kinds[block] === WHITE) kinds[cell] |= MARK.lights;
    }
  }
  return kinds;
}

import { BLOCK, type Blocks } from './tally';

/** Blocks for a picture of that size, none counted yet; `greens`: with room for each one's range of G. */
export function emptyBlocks(width: number, height: number, channels: number, greens = false): Blocks {
  const columns = Math.ceil(width / BLOCK);
  const rows = Math.ceil(height / BLOCK);
  return {
    channels,
    columns,
    rows,
    count: new Uint8Array(columns * rows),
    means: new Float32Array(columns * rows * channels),
    greens: new Uint8Array(greens ? columns * rows * 2 : 0),
  };
}

import type { Samples } from '../types';
import { TiledBlocks } from './blocks';
import { cellsOf } from './cells';
import { type Kernel, loadKernel } from './kernel';
import { labTally } from './lab';
import { BLOCK, type Tally } from './tally';
import { type TileKind, Tiles } from './tiles';

/** Walks once over every pixel of a page at full size and depth and counts. */
export function tallyOf(samples: Samples): Tally {
  if (samples.space === 'lab') return labTally(samples);
  const { width, height, channels } = samples;
  const kernel = loadKernel();
  kernel.reset(channels);
  const tiles = new Tiles(kernel, samples);
  const blocks = new TiledBlocks(width, height, channels);
  const widest = kernel.value('TILE_WIDTH');
  for (let y = 0; y < height; y += BLOCK)
    for (let x = 0; x < width; x += widest) {
      const columns = Math.min(widest, width - x);
      const rows = Math.min(BLOCK, height - y);
      const kind = tiles.load(x, y, columns, rows);
      count(kernel, channels, columns, rows, kind);
      findPlain(kernel, samples, columns, rows, kind);
      blocks.take(kernel, x, y, columns);
    }
  const leftOut = kernel.value('leftOut');
  const pixels = width * height - leftOut;
  const deep = !(samples.data instanceof Uint8Array);
  return {
    levels: tiles.levels(pixels),
    pixels,
    leftOut,
    partial: kernel.value('partial'),
    spread: deep ? kernel.value('deepSpread') / 257 : kernel.value('spread'),
    inkTotal: ((deep ? kernel.value('deepTotal') / 257 : kernel.value('inkTotal')) / 255) * 100,
    cells: cellsOf(kernel, channels),
    blocks,
  };
}

function count(kernel: Kernel, channels: 1 | 3 | 4, width: number, rows: number, kind: TileKind) {
  const { grey8, rgb8, inks8, greySingly, rgbSingly, inksSingly } = kernel;
  if (kind === 'masked') {
    const singly = { 1: greySingly, 3: rgbSingly, 4: inksSingly }[channels];
    singly(0, width, rows, true, false);
  } else {
    const whole = { 1: grey8, 3: rgb8, 4: inks8 }[channels];
    whole(width, rows, kind === 'stored');
  }
}

function findPlain(kernel: Kernel, { data, channels }: Samples, width: number, rows: number, kind: TileKind) {
  kernel.findPlain(width, channels);
  if (data instanceof Uint8Array || channels === 4) return;
  const masked = kind === 'masked';
  // what was composited still lies beside its alpha
  kernel.unfindShades(width, rows, channels, masked ? channels + 1 : channels, masked);
}

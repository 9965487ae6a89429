import type { Level } from '../../shared/picture';
import type { Samples } from '../types';
import { PlainBlocks } from './blocks';
import { BLACK, BLOCK, type Tally, WHITE } from './tally';

/** Units of a Lab raster's samples: L* x 327.67, a* and b* x 256. */
export const LAB_UNITS = [327.67, 256, 256];
/** Steps of the table: L* in 256 steps of 100/255; a*, b* in 64 of half a unit near neutral, in 64 of four beyond. */
const L_STEP = 100 / 255;

/**
 * The same walk for Lab pictures, in plain TypeScript since they are rare. Values are told apart to 0.4 in L* and 0.5
 * in a*, b* (4 beyond 16); levels and block means are exact.
 */
export function labTally(samples: Samples): Tally {
  const { width, height, data } = samples;
  const step = samples.alpha ? 4 : 3;
  const near = new Map<number, number>();
  const blocks = new PlainBlocks(width, height, 3);
  const least = [Infinity, Infinity, Infinity];
  const most = [-Infinity, -Infinity, -Infinity];
  const sum = [0, 0, 0];
  const value = [0, 0, 0];
  let pixels = 0;
  let partial = 0;
  for (let y = 0, at = 0; y < height; y++)
    for (let x = 0; x < width; x++, at += step) {
      const alpha = step === 4 ? Math.min(1, Math.max(0, data[at + 3] / 32767)) : 1;
      if (alpha === 0) continue;
      if (alpha < 1) partial++;
      pixels++;
      const block = Math.floor(y / BLOCK) * blocks.columns + Math.floor(x / BLOCK);
      blocks.count[block]++;
      for (let c = 0; c < 3; c++) {
        const stored = data[at + c] / LAB_UNITS[c];
        if (stored < least[c]) least[c] = stored;
        if (stored > most[c]) most[c] = stored;
        sum[c] += stored;
        // paper: L* 100, a* and b* 0
        value[c] = stored * alpha + (c === 0 ? 100 * (1 - alpha) : 0);
        blocks.means[block * 3 + c] += value[c];
      }
      const key = keyOf(value[0], value[1], value[2]);
      near.set(key, (near.get(key) ?? 0) + 1);
    }
  for (let i = 0; i < blocks.means.length; i++)
    blocks.means[i] /= Math.max(1, blocks.count[Math.floor(i / 3)]);
  for (let block = 0; block < blocks.count.length; block++)
    if (blocks.count[block] > 0) blocks.kinds[block] = kindOf(blocks.mean(block, 0));
  return {
    levels: least.map(
      (min, c): Level =>
        pixels ? { min, max: most[c], mean: sum[c] / pixels } : { min: 0, max: 0, mean: 0 },
    ),
    pixels,
    leftOut: width * height - pixels,
    partial,
    spread: 0,
    inkTotal: 0,
    cells: {
      channels: 3,
      length: near.size,
      count: Float64Array.from(near.values()),
      values: Float32Array.from([...near.keys()].flatMap(fromKey)),
    },
    blocks,
  };
}

/** White and black by L* alone. */
function kindOf(L: number): number {
  return L >= 100 - L_STEP ? WHITE : L <= L_STEP ? BLACK : 0;
}

const clamp = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));

function keyOf(L: number, a: number, b: number): number {
  const l = Math.round(clamp(L, 0, 100) / L_STEP);
  const far = Math.abs(a) >= 16 || Math.abs(b) >= 16;
  const step = far ? 4 : 0.5;
  const i = Math.round(clamp(a, -128, 127) / step) + 32;
  const j = Math.round(clamp(b, -128, 127) / step) + 32;
  return (far ? 1 << 22 : 0) + (l << 14) + (i << 7) + j;
}

function fromKey(key: number): [number, number, number] {
  const step = key & (1 << 22) ? 4 : 0.5;
  return [((key >> 14) & 255) * L_STEP, (((key >> 7) & 127) - 32) * step, ((key & 127) - 32) * step];
}

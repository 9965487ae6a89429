// no-unit-test: test/cli/demo.test.ts makes the book and checks every picture of it
import type { Film } from '../film';
import { cellRandom, fbm2, noise2, ridges2 } from '../noise';
import { expose, mix, type Plate, smoothstep } from '../plate';
import { light } from '../relief';

export const film: Film = { contrast: 1.35, stops: 0.1, vignette: 0.25, grain: 0.012 };

/** The quarry's north face in hard winter sun: beds of stone, saw benches, drill marks, scree at the foot. */
export function cliff(width: number, height: number): Plate {
  const heights = expose(width, height, face);
  const { direct, open } = light(heights, { towards: [0.75, -0.62, 0.52], softness: 0.12, reach: 0.7 }, 0.07);
  let i = 0;
  return expose(width, height, (x, y) => {
    const stain = smoothstep(0.05, 0.6, fbm2(x * 9 + 3, y * 0.9, 4) + 0.3 * fbm2(x * 2, y * 2 + 9, 3));
    const bed = 0.06 * noise2(x * 0.5, bedOf(x, y) * 5.1) + 0.05 * noise2(x * 40, y * 40);
    const stone = mix(0.62, 0.33, stain) + bed + 0.08 * fbm2(x * 6, y * 6, 4);
    const value = stone * (0.02 + 0.12 * open[i] + 1.2 * direct[i] * mix(0.6, 1, open[i]));
    i++;
    return Math.max(0.001, value);
  });
}

const bedOf = (x: number, y: number) => y + 0.12 * x + 0.05 * noise2(x * 1.3, y * 0.8 + 3);

function face(x: number, y: number): number {
  // edges break as stone breaks: never along a ruler
  const wx = x + 0.05 * fbm2(x * 3 + 4, y * 3, 4);
  const wy = y + 0.06 * fbm2(x * 2.6, y * 3.4 + 8, 4);
  const bed = bedOf(wx, wy) * 2.2 + 0.8 * noise2(0.4, wy * 1.4) + 0.2;
  const layer = Math.floor(bed);
  const within = bed - layer;
  const joint = wx * (1.1 + 1.9 * cellRandom(layer, 5, 1)) + 7 * cellRandom(layer, 9, 2) + 0.22 * wy;
  const block = Math.floor(joint);
  const side = joint - block;
  const back = 0.13 * cellRandom(block, layer, 3) + 0.12 * cellRandom(layer, 2, 8) + 0.18 * within;
  const tilt = (side - 0.5) * 0.16 * (cellRandom(block, layer, 5) - 0.5);
  const thin = bedOf(wx, wy) * 17;
  const lamina =
    0.014 *
    smoothstep(0.12, 0, Math.abs(thin - Math.round(thin))) *
    smoothstep(0, 0.4, noise2(x * 1.5, thin * 0.2));
  const vein = Math.abs(noise2(wx * 1.7 + 0.5 * wy, wy * 0.6 + 3));
  const crack = 0.03 * smoothstep(0.016, 0, vein) * smoothstep(-0.3, 0.2, noise2(x * 2, y * 2));
  const bored = cellRandom(block, layer, 11) > 0.7;
  const drill = bored
    ? 0.009 *
      Math.abs(Math.sin(x * 44 + 6 * cellRandom(block, 3, 3))) *
      smoothstep(0.85, 0.55, within) *
      smoothstep(0.02, 0.06, side)
    : 0;
  const rough = 0.075 * (ridges2(x * 1.9, y * 1.9 + 5, 6) - 0.5) + 0.02 * fbm2(x * 13, y * 13, 4);
  const wall =
    0.2 -
    back +
    tilt -
    lamina -
    crack -
    drill +
    rough * (bored ? 0.45 : 1) +
    0.16 * fbm2(x * 0.6, y * 0.5, 2);
  const foot = y - 0.7 - 0.2 * noise2(x * 1.1 + 6, 0.5) + 0.16 * x;
  const heap = foot * 0.55;
  return heap + HIGHEST < wall ? wall : Math.max(wall, heap + scree(x, y));
}

/** No piece of scree stands higher above its heap. */
const HIGHEST = 0.12;

/** Heaps of broken stone: the nearest of scattered tilted pieces. */
function scree(x: number, y: number): number {
  let top = -1;
  for (let size = 0; size < 2; size++) {
    const scale = size === 0 ? 9 : 21;
    const u = x * scale;
    const v = y * scale * 1.2;
    const cx = Math.floor(u);
    const cy = Math.floor(v);
    for (let dy = -1; dy <= 1; dy++)
      for (let dx = -1; dx <= 1; dx++) {
        const px = cx + dx;
        const py = cy + dy;
        const ox = u - px - cellRandom(px, py, 20 + size);
        const oy = v - py - cellRandom(px, py, 30 + size);
        const turn = cellRandom(px, py, 40) * 3.1;
        const a = Math.abs(ox * Math.cos(turn) + oy * Math.sin(turn));
        const b = Math.abs(oy * Math.cos(turn) - ox * Math.sin(turn)) * 1.4;
        const piece = (0.62 - Math.max(a, b, (a + b) * 0.72)) / scale + (cellRandom(px, py, 50) - 0.5) * 0.06;
        if (piece > top) top = piece;
      }
  }
  return Math.max(-0.06, top) * 1.25 + 0.012 * fbm2(x * 30, y * 30, 3);
}

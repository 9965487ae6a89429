import { monotoneCurve } from './curve';
import type { InkTable } from './table';

/** A measured patch: C, M, Y, K in percent, XYZ with Y of the perfect diffuser = 100. */
export interface Patch {
  inks: readonly [number, number, number, number];
  xyz: readonly [number, number, number];
}

/** A complete grid of C, M, Y at one K. */
interface Layer {
  k: number;
  levels: number[];
  /** XYZ^(1/2), index ((c * n + m) * n + y) * 3. */
  roots: Float64Array;
}

/** Which tristimulus value follows the ink best: C absorbs X, M absorbs Y, Y absorbs Z, K all. */
const FOLLOWS = [0, 1, 2, 1];
const STEPS = 1000;

const keyOf = (c: number, m: number, y: number, k: number) => `${c},${m},${y},${k}`;

/**
 * Interpolates characterisation data: linear in XYZ^(1/2) on the complete CMY grids of each K layer, with every ink's
 * axis remapped by that ink's own ramp, so that a single ink follows its measured ramp between the grid's levels.
 * Needs complete grids (0 and 100 among their levels) at K 0 and K 100; what is in no grid (ramps apart) is not used.
 */
export function characterisedInks(patches: readonly Patch[]): InkTable {
  const measured = meanByInks(patches);
  const layers = completeLayers(measured);
  if (layers.length < 2 || layers[0].k !== 0 || layers[layers.length - 1].k !== 100)
    throw new Error('characterisation data need complete CMY grids at K 0 and K 100');
  const ramps = [0, 1, 2, 3].map(ink => rampOf(measured, ink));
  const stops = layers.map(layer => layer.levels.map(level => level / 100));
  const kStops = layers.map(layer => layer.k / 100);
  const at = new Float64Array(6);
  const where: Position = { index: 0, share: 0 };
  const base = new Int32Array(3);
  const share = new Float64Array(3);

  /** XYZ^(1/2) of one layer, added to `at` from `offset` on. */
  function layerRoots(layer: number, inks: ArrayLike<number>, offset: number) {
    const { levels, roots } = layers[layer];
    const n = levels.length;
    for (let ink = 0; ink < 3; ink++) {
      locate(ramps[ink], stops[layer], inks[ink], where);
      base[ink] = where.index;
      share[ink] = where.share;
    }
    at[offset] = at[offset + 1] = at[offset + 2] = 0;
    for (let corner = 0; corner < 8; corner++) {
      const c = corner & 1;
      const m = (corner >> 1) & 1;
      const y = corner >> 2;
      const w = (c ? share[0] : 1 - share[0]) * (m ? share[1] : 1 - share[1]) * (y ? share[2] : 1 - share[2]);
      if (w === 0) continue;
      const i = (((base[0] + c) * n + base[1] + m) * n + base[2] + y) * 3;
      at[offset] += w * roots[i];
      at[offset + 1] += w * roots[i + 1];
      at[offset + 2] += w * roots[i + 2];
    }
  }

  return {
    xyz(inks, out) {
      locate(ramps[3], kStops, inks[3], where);
      const { index, share: t } = where;
      layerRoots(index, inks, 0);
      if (t > 0) layerRoots(index + 1, inks, 3);
      for (let i = 0; i < 3; i++) {
        const root = t > 0 ? at[i] + t * (at[i + 3] - at[i]) : at[i];
        out[i] = root * root;
      }
    },
  };
}

interface Position {
  index: number;
  share: number;
}

/** Interval of `stops` and the place in it, measured along the ink's own ramp. */
function locate(ramp: Float64Array, stops: readonly number[], value: number, where: Position) {
  const v = value <= 0 ? 0 : Math.min(value, 1);
  let i = stops.length - 2;
  while (i > 0 && stops[i] > v) i--;
  const from = onRamp(ramp, stops[i]);
  where.index = i;
  where.share = (onRamp(ramp, v) - from) / (onRamp(ramp, stops[i + 1]) - from);
}

function onRamp(ramp: Float64Array, value: number): number {
  const position = value * STEPS;
  const i = Math.min(STEPS - 1, Math.floor(position));
  return ramp[i] + (position - i) * (ramp[i + 1] - ramp[i]);
}

function meanByInks(patches: readonly Patch[]): Map<string, Patch> {
  const groups = new Map<string, Patch[]>();
  for (const patch of patches) {
    const key = keyOf(...patch.inks);
    const group = groups.get(key);
    if (group) group.push(patch);
    else groups.set(key, [patch]);
  }
  const mean = (group: Patch[], i: number) => group.reduce((sum, p) => sum + p.xyz[i], 0) / group.length;
  return new Map(
    [...groups].map(([key, group]) => [
      key,
      { inks: group[0].inks, xyz: [mean(group, 0), mean(group, 1), mean(group, 2)] },
    ]),
  );
}

function completeLayers(measured: Map<string, Patch>): Layer[] {
  const layers: Layer[] = [];
  const ks = [...new Set([...measured.values()].map(p => p.inks[3]))].sort((a, b) => a - b);
  for (const k of ks) {
    const levels = completeLevels(measured, k);
    if (levels.length < 2 || levels[0] !== 0 || levels[levels.length - 1] !== 100) continue;
    const n = levels.length;
    const roots = new Float64Array(n ** 3 * 3);
    for (let c = 0; c < n; c++)
      for (let m = 0; m < n; m++)
        for (let y = 0; y < n; y++) {
          const { xyz } = measured.get(keyOf(levels[c], levels[m], levels[y], k))!;
          roots.set(xyz.map(Math.sqrt), ((c * n + m) * n + y) * 3);
        }
    layers.push({ k, levels, roots });
  }
  return layers;
}

/** The levels whose every combination was measured at this K: the level with most gaps is dropped until none is left. */
function completeLevels(measured: Map<string, Patch>, k: number): number[] {
  const present = [...measured.values()].filter(p => p.inks[3] === k);
  let levels = [...new Set(present.flatMap(p => p.inks.slice(0, 3)))].sort((a, b) => a - b);
  for (;;) {
    const gaps = levels.map(() => 0);
    levels.forEach((c, i) => {
      levels.forEach((m, j) => {
        levels.forEach((y, l) => {
          if (!measured.has(keyOf(c, m, y, k))) for (const at of [i, j, l]) gaps[at]++;
        });
      });
    });
    const most = Math.max(...gaps);
    if (!(most > 0)) return levels;
    levels = levels.filter((_, i) => i !== gaps.lastIndexOf(most));
  }
}

/** The ink's own ramp (other inks absent) as the square root of the tristimulus value that it absorbs, 0-1 in steps. */
function rampOf(measured: Map<string, Patch>, ink: number): Float64Array {
  const points = [...measured.values()]
    .filter(p => p.inks.every((value, i) => i === ink || value === 0))
    .sort((a, b) => a.inks[ink] - b.inks[ink]);
  const curve = monotoneCurve(
    points.map(p => p.inks[ink] / 100),
    points.map(p => Math.sqrt(p.xyz[FOLLOWS[ink]])),
  );
  return Float64Array.from({ length: STEPS + 1 }, (_, i) => curve(i / STEPS));
}

// no-unit-test: shared by the tests of this folder
import fs from 'node:fs';
import path from 'node:path';
import { differenceCiede2000 } from 'culori';
import { xyzToLab } from '../../src/colour/lab';
import { measuredPress, type PressSet, pressDataText } from '../../src/colour/press';
import { characterisedInks, type Patch } from '../../src/colour/press/characterised';
import { patchesOf } from '../../src/colour/press/patches';

const FREE_PROFILES = '/usr/share/color/icc';

/** A set of Debian's icc-profiles-free (measured conditions that are not shipped, for checks only). */
export function foreignSet(name: 'FOGRA29L' | 'FOGRA39L'): Patch[] {
  const file = path.join(FREE_PROFILES, `${name}.ti3`);
  if (!fs.existsSync(file))
    throw new Error(
      `${file} is missing: apt-get install icc-profiles-free (outside check of the press data)`,
    );
  return patchesOf(fs.readFileSync(file, 'latin1'));
}

export const shippedSet = (id: PressSet): Patch[] => patchesOf(pressDataText(id));

/** CIELAB of inks in percent by the interpolation of a set. */
export function labAt(patches: readonly Patch[]) {
  const table = characterisedInks(patches);
  return (...percent: number[]): Float64Array => {
    const xyz = new Float64Array(3);
    table.xyz(
      percent.map(value => value / 100),
      xyz,
    );
    return xyzToLab(xyz, xyz);
  };
}

/** The same of a shipped set, without reading it again. */
export function shippedLab(id: PressSet, ...percent: number[]): Float64Array {
  const xyz = new Float64Array(3);
  measuredPress(id).xyz(
    percent.map(value => value / 100),
    xyz,
  );
  return xyzToLab(xyz, xyz);
}

const ciede2000 = differenceCiede2000();

/** CIEDE2000 of two D50 colours: given as the library's D65 Lab mode, which computes without converting. */
export function dE00(x: ArrayLike<number>, y: ArrayLike<number>): number {
  const colour = (lab: ArrayLike<number>) => ({ mode: 'lab65' as const, l: lab[0], a: lab[1], b: lab[2] });
  return ciede2000(colour(x), colour(y));
}

export const dE76 = (x: ArrayLike<number>, y: ArrayLike<number>) =>
  Math.hypot(x[0] - y[0], x[1] - y[1], x[2] - y[2]);

/** Deterministic standard normals (linear congruential generator, Box-Muller): the same draws on every run. */
export function normals(seed: number): () => number {
  let state = seed >>> 0;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

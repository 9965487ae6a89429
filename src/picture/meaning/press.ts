import { D50, lightness, xyzToLab } from '../../colour/lab';
import { measuredPress } from '../../colour/press';
import { LabGrid } from './grid';

/** Nodes an ink: interpolating TR 006 between them adds less than its own error (see the test). */
const SIDE = 13;
/** Ink is seen most where there is little of it. */
const BEND = 0.8;
let grid: LabGrid | null = null;

/** Inks without a profile, by ANSI/CGATS TR 006 (grade 1 coated paper), relative to its paper. Made on first use. */
export function pressMeaning(): LabGrid {
  grid ??= new LabGrid(4, SIDE, BEND, labOfInks);
  return grid;
}

function labOfInks(inks: Float64Array, out: Float64Array) {
  const table = measuredPress('TR006');
  const xyz = new Float64Array(3);
  const paper = new Float64Array(3);
  table.xyz([0, 0, 0, 0], paper);
  for (let i = 0; i < out.length / 3; i++) {
    table.xyz(inks.subarray(i * 4, i * 4 + 4), xyz);
    for (let c = 0; c < 3; c++) xyz[c] *= D50[c] / paper[c];
    out.set(xyzToLab(xyz, xyz), i * 3);
  }
}

/** L* of black ink alone (0-1) by the same data, relative to their paper; as measured, not from the grid. */
export function blackLightness(black: number): number {
  const table = measuredPress('TR006');
  const xyz = new Float64Array(3);
  table.xyz([0, 0, 0, 0], xyz);
  const paper = xyz[1];
  table.xyz([0, 0, 0, black], xyz);
  return lightness((100 * xyz[1]) / paper);
}

import { labToXyz, luminance, xyzToLab } from '../../colour/lab';
import type { InkTable } from '../../colour/press/table';
import type { AB } from '../../shared/forecast';
import type { PrintModel } from '../model';
import { driftedTone, type InkScatter, inkDrifts } from './drift';
import { rangeCorrection } from './substrate';

export interface InkModelParts {
  table: InkTable;
  /** Lab (D50) of the paper to print on; the table's own paper is corrected to it. */
  paper: readonly [number, number, number];
  /** L* of all inks together where it differs from the table's; absent = the table's own. */
  darkest?: number;
  scatter: InkScatter;
  /** Measured departure of this process from the table along the tone scale of coloured greys; absent = none. */
  offset?: (L: number) => AB;
  /** Standard deviation of the table itself against such data, for greys made of coloured inks; absent = none. */
  tableError?: AB;
  ground: readonly string[];
}

/** Inks of a process on a paper under D50. Device values: C, M, Y, K in 0-1. */
export function inkModel(parts: InkModelParts): PrintModel {
  const { table, paper, scatter, offset, tableError } = parts;
  const xyz = new Float64Array(3);
  const inks = new Float64Array(4);
  const at = (c: number, m: number, y: number, k: number) => {
    table.xyz([c, m, y, k], xyz);
    return Float64Array.from(xyz);
  };
  const own = at(0, 0, 0, 0);
  const darkest = at(1, 1, 1, 1);
  const black = at(0, 0, 0, 1);
  const wanted = new Float64Array(3);
  labToXyz(paper, wanted);
  const darker = parts.darkest === undefined ? 1 : luminance(parts.darkest) / darkest[1];
  const moves = [0, 1, 2].map(i => rangeCorrection(own[i], wanted[i], darkest[i], darkest[i] * darker));
  const kRoots = [Math.sqrt(own[1]), Math.sqrt(black[1])];

  // the causes of drift are tried one after the other on the same inks, and most of them leave most inks alone
  const coverage = { k: 0, share: 0 };
  const latest = { inks: new Float64Array(4).fill(Number.NaN), xyz: new Float64Array(3) };

  /** Effective coverage of black alone, 0-1, at this K. */
  function blackCoverage(k: number): number {
    if (k === coverage.k) return coverage.share;
    table.xyz([0, 0, 0, k], xyz);
    coverage.k = k;
    coverage.share = (kRoots[0] - Math.sqrt(xyz[1])) / (kRoots[0] - kRoots[1]);
    return coverage.share;
  }

  /** XYZ of `inks` on the paper to print on, into `xyz`. */
  function onPaper() {
    if (inks.some((value, i) => value !== latest.inks[i])) {
      table.xyz(inks, latest.xyz);
      for (let i = 0; i < 3; i++)
        latest.xyz[i] = Math.max(0, moves[i].slope * latest.xyz[i] + moves[i].intercept);
      latest.inks.set(inks);
    }
    xyz.set(latest.xyz);
  }

  return {
    dimensions: 4,
    drifts: inkDrifts(scatter),
    white: [...paper],
    lab(device, drift, out) {
      const shade = drift && (drift[4] !== 0 || drift[5] !== 0) ? blackCoverage(device[3]) : 0;
      for (let i = 0; i < 4; i++) inks[i] = drift ? driftedTone(device[i], drift[i]) : device[i];
      onPaper();
      xyzToLab(xyz, out);
      if (offset) {
        const share = colouredShare(device);
        if (share > 0) {
          const { a, b } = offset(out[0]);
          out[1] += a * share;
          out[2] += b * share;
        }
      }
      if (drift) {
        out[1] += shade * drift[4];
        out[2] += shade * drift[5];
      }
    },
    dataSpread(L, device) {
      const share = colouredShare(device) * Math.min(1, Math.max(0, (paper[0] - L) / 20));
      const own = (sd: number, error: number) => share * Math.hypot(sd, error);
      return {
        a: own(scatter.colouredGrey.a, tableError?.a ?? 0),
        b: own(scatter.colouredGrey.b, tableError?.b ?? 0),
      };
    },
    ground: parts.ground,
  };
}

/** How much of a grey is made by coloured inks rather than by black, 0-1 (own simplification, by tone values). */
export function colouredShare(inks: ArrayLike<number>): number {
  const coloured = (inks[0] + inks[1] + inks[2]) / 3;
  return coloured === 0 ? 0 : coloured / (coloured + inks[3]);
}

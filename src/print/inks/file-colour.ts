import { D50, xyzToLab } from '../../colour/lab';
import { pressData } from '../data';

/**
 * CIELAB (relative to the paper) that a conversion program gives ink values for which no profile is at hand: by ANSI/
 * CGATS TR 006, relative colorimetry with black-point compensation, so that paper is L* 100 and all inks together 0.
 */
export function relativeLabOfInks(inks: ArrayLike<number>): [number, number, number] {
  const table = pressData('TR006');
  const xyz = new Float64Array(3);
  const paper = new Float64Array(3);
  const darkest = new Float64Array(3);
  table.xyz([0, 0, 0, 0], paper);
  table.xyz([1, 1, 1, 1], darkest);
  table.xyz(inks, xyz);
  const black = darkest[1] / paper[1];
  for (let i = 0; i < 3; i++) xyz[i] = Math.max(0, (D50[i] * (xyz[i] / paper[i] - black)) / (1 - black));
  const lab = new Float64Array(3);
  xyzToLab(xyz, lab);
  return [lab[0], lab[1], lab[2]];
}

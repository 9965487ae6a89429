import { spectralView } from '../../colour/spectra';
import { brightenerExcess } from './brightener';
import { type PaperSpectrum, printRadiance } from './paper-spectrum';
import { GRID } from './sampling';
import { tonerPaper, tonerScale, tonerTransmittance } from './toner';

/** Writes what a grey of one kind of ink lets through at a depth (0 = bare paper) per wavelength of `GRID`. */
export type GreyInk = (depth: number, out: Float64Array) => Float64Array;

/** Black ink: flat, since the solids of black in all public data are within about 1.5 of neutral. */
export const flatBlack: GreyInk = (depth, out) => out.fill(Math.exp(-depth));

/** Where the depth of a grey is told: 550 nm. */
const GREEN = 15;

/**
 * Greys of cyan, magenta and yellow: the measured toner scale; between its steps, and beyond the last, in proportion of
 * their densities.
 */
export const colouredGrey: GreyInk = (depth, out) => {
  const { steps, depths } = (toner ??= readToner());
  const last = steps.length - 1;
  const next = depths.findIndex(value => value >= depth);
  const i = next < 0 ? last : Math.max(1, next);
  const from = next < 0 ? 0 : i - 1;
  const t = (depth - depths[from]) / (depths[i] - depths[from]);
  for (let j = 0; j < out.length; j++) out[j] = Math.exp(steps[from][j] + t * (steps[i][j] - steps[from][j]));
  return out;
};

let toner: { steps: Float64Array[]; depths: number[] } | null = null;

function readToner() {
  const scale = tonerScale('tvi-calibrated');
  const paper = tonerPaper(scale);
  const steps = [
    new Float64Array(GRID.count),
    ...scale.greys.map(grey => tonerTransmittance(paper, grey).map(Math.log)),
  ];
  return { steps, depths: steps.map(step => -step[GREEN]) };
}

/** What the grey that prints lightness L on the paper under D50 lets through. */
export function greyOnPaper(ink: GreyInk, paper: PaperSpectrum, L: number): Float64Array {
  const view = spectralView('D50', GRID);
  const daylight = brightenerExcess('D50');
  const transmittance = new Float64Array(GRID.count);
  const spectrum = new Float64Array(GRID.count);
  const lab = new Float64Array(3);
  let [low, high] = [0, 12];
  for (let turn = 0; turn < 24; turn++) {
    const depth = (low + high) / 2;
    printRadiance(paper, daylight, ink(depth, transmittance), spectrum);
    if (view.lab(spectrum, lab)[0] > L) low = depth;
    else high = depth;
  }
  return ink((low + high) / 2, transmittance);
}

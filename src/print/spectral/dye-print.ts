import { spectralView } from '../../colour/spectra';
import type { LightId } from '../../shared/target';
import { brightenerExcess } from './brightener';
import { type Dyes, dyeTransmittance } from './dyes';
import { type PaperSpectrum, printRadiance } from './paper-spectrum';
import { GRID } from './sampling';
import { solve3 } from './solve';

/** Dyes on a paper: amounts (peak densities of cyan, magenta, yellow) to colour. */
export interface DyePrint {
  /** CIELAB as seen under the light by an observer adapted to it (CAT16 to D50). */
  lab(amounts: ArrayLike<number>, out: Float64Array): Float64Array;
}

export interface DyePrintParts {
  dyes: Dyes;
  paper: PaperSpectrum;
  /** Light that the surface throws back before it meets a dye, a share of the perfect diffuser's. */
  flare: number;
  light: LightId;
  /** The light whose ultraviolet excites the brightener where that is another one. */
  ultraviolet?: LightId;
}

export function dyePrint({ dyes, paper, flare, light, ultraviolet = light }: DyePrintParts): DyePrint {
  const view = spectralView(light, GRID);
  const excess = brightenerExcess(ultraviolet);
  const transmittance = new Float64Array(GRID.count);
  const spectrum = new Float64Array(GRID.count);
  return {
    lab(amounts, out) {
      printRadiance(paper, excess, dyeTransmittance(dyes, amounts, transmittance), spectrum);
      // Bare paper is measured with its flare in it: only what the dyes darken is lifted.
      for (let i = 0; i < spectrum.length; i++) spectrum[i] += flare * (1 - transmittance[i]);
      return view.lab(spectrum, out);
    },
  };
}

/** Newton's method may end a little below nothing on a paper that is itself the aim. */
const LEAST = -0.02;

/** Amounts of dye that print a colour; `start` from the amounts of one nearby. Throws where no amounts do. */
export function amountsFor(print: DyePrint, lab: ArrayLike<number>, start: ArrayLike<number>): Float64Array {
  const amounts = solve3((x, out) => print.lab(x, out), lab, start, 1e-5);
  if (amounts.some(value => value < LEAST))
    throw new Error(`no dyes print ${Array.from(lab, value => value.toFixed(1)).join(', ')} on this paper`);
  return amounts;
}

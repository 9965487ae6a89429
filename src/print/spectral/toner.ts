import { parseTable } from '../../colour/table';
import tonerText from '../data/liquid_toner_near_neutral_measured.csv';
import { AMOUNT, brightenerExcess } from './brightener';
import type { PaperSpectrum } from './paper-spectrum';
import { spectraIn } from './sampling';

/** A grey of cyan, magenta and yellow toner as it was measured on one press. */
export interface TonerGrey {
  /** Tone values of the file, C, M, Y, K in 0-1. */
  inks: readonly [number, number, number, number];
  /** CIELAB D50, M1. */
  lab: readonly [number, number, number];
  /** Total radiance factor under D50, brightener included, on `GRID`. */
  radiance: Float64Array;
}

export interface TonerScale {
  paper: TonerGrey;
  /** From light to dark. */
  greys: TonerGrey[];
}

/** How the press was set up: by straight curves, by the usual tone value curves, or to neutral greys. */
export type TonerState = 'linear' | 'tvi-calibrated' | 'grey-tuned';

const scales = new Map<TonerState, TonerScale>();

/** The measured greys of the press in one state (A. Beltrami 2022, hdl.handle.net/10609/138386, CC BY-SA 4.0). */
export function tonerScale(state: TonerState): TonerScale {
  if (scales.size === 0) for (const [name, scale] of readScales()) scales.set(name, scale);
  return scales.get(state)!;
}

function readScales(): Map<TonerState, TonerScale> {
  const table = parseTable(tonerText);
  const spectra = spectraIn(table, 'R');
  const [L, a, b, C, M, Y] = ['L', 'a', 'b', 'C', 'M', 'Y'].map(name => table.column(name));
  const rows = spectra.map(
    (radiance, i): TonerGrey => ({
      inks: [C[i] / 100, M[i] / 100, Y[i] / 100, 0],
      lab: [L[i], a[i], b[i]],
      radiance,
    }),
  );
  const states = table.labels('state') as TonerState[];
  return new Map(
    [...new Set(states)].map(state => {
      const own = rows.filter((_, i) => states[i] === state).sort((one, other) => other.lab[0] - one.lab[0]);
      return [state, { paper: own[0], greys: own.slice(1) }];
    }),
  );
}

/** Brightener in the press's paper, judged by its white (b* about -7): the class of a brightened coated paper. */
const PAPER = AMOUNT.moderate;

/** The press's paper as a spectrum, its brightener apart. */
export function tonerPaper(scale: TonerScale): PaperSpectrum {
  const excess = brightenerExcess('D50');
  return { base: scale.paper.radiance.map((value, i) => value - PAPER * excess[i]), amount: PAPER };
}

/**
 * What the toner of a grey lets through (there and back) per wavelength of `GRID`: its measured radiance without what the
 * paper's brightener still adds, beside the paper's own. Since the brightener's light fades with the toner, in turns.
 */
export function tonerTransmittance(paper: PaperSpectrum, grey: TonerGrey): Float64Array {
  const excess = brightenerExcess('D50');
  let transmittance = grey.radiance.map((value, i) => value / paper.base[i]);
  for (let turn = 0; turn < 8; turn++) {
    const glow = paper.amount * Math.sqrt(transmittance[0] * transmittance[4]);
    transmittance = grey.radiance.map((value, i) =>
      Math.max(1e-4, (value - glow * excess[i]) / paper.base[i]),
    );
  }
  return transmittance;
}

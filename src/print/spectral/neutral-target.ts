import { parseTable } from '../../colour/table';
import targetText from '../data/chromogenic_neutral_scale_spectra.csv';
import { spectraIn } from './sampling';

/** A target on chromogenic paper as it was measured: reflectance on `GRID` of bare paper and of 22 greys, light to dark. */
export interface NeutralTarget {
  paper: Float64Array;
  greys: Float64Array[];
}

let target: NeutralTarget | null = null;

/** University of Eastern Finland spectral database: neutral scale of a target on chromogenic paper (d/8, no gloss). */
export function neutralTarget(): NeutralTarget {
  if (!target) {
    const table = parseTable(targetText);
    const patches = table.labels('patch');
    const spectra = spectraIn(table);
    target = {
      paper: spectra[patches.indexOf('288')],
      greys: spectra.slice(patches.indexOf('265'), patches.indexOf('286') + 1),
    };
  }
  return target;
}

/** Light that the instrument and the surface add to it: the darkest patch still reflects 4.6 %. */
export const STRAY = 0.045;

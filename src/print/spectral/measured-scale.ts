import { spectralView } from '../../colour/spectra';
import { parseTable } from '../../colour/table';
import type { LightId } from '../../shared/target';
import scaleText from '../data/chromogenic_neutral_scale_spectra.csv';
import { amountsFor, dyePrint } from './dye-print';
import type { Dyes } from './dyes';
import { GRID, spectraIn } from './sampling';

/** A grey of the scale: under D50, how the measured spectrum moves under a light, and how dyes of the same colour do. */
export interface ScaleStep {
  lab: Float64Array;
  measured: Float64Array;
  modelled: Float64Array;
}

/** Light that the instrument and the surface add: the darkest patch of the target still reflects 4.6 %. */
const STRAY = 0.045;

/**
 * The neutral scale of a target on chromogenic paper, measured: each step beside the model's dyes on the same paper,
 * in the amounts that match it under D50. From the lightest step to the darkest.
 */
export function measuredScale(dyes: Dyes, light: LightId): ScaleStep[] {
  const table = parseTable(scaleText);
  const patches = table.labels('patch');
  const spectra = spectraIn(table);
  const parts = { dyes, paper: { base: spectra[patches.indexOf('288')], amount: 0 }, flare: STRAY };
  const daylight = dyePrint({ ...parts, light: 'D50' });
  const other = dyePrint({ ...parts, light });
  const [d50, view] = [spectralView('D50', GRID), spectralView(light, GRID)];
  let amounts = new Float64Array(3);
  const steps = spectra.slice(0, patches.indexOf('287')).map(spectrum => {
    const lab = d50.lab(spectrum, new Float64Array(3));
    const move = (to: Float64Array) => to.map((value, i) => value - lab[i]);
    amounts = Float64Array.from(amountsFor(daylight, lab, amounts));
    return {
      lab,
      measured: move(view.lab(spectrum, new Float64Array(3))),
      modelled: move(other.lab(amounts, new Float64Array(3))),
    };
  });
  return steps.sort((one, other) => other.lab[0] - one.lab[0]);
}

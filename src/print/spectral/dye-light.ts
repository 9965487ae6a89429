import type { LightId } from '../../shared/target';
import { dyePrint } from './dye-print';
import { type DyeSetId, dyeSet } from './dyes';
import { measuredDeparture } from './measured-scale';
import { STRAY } from './neutral-target';
import type { PaperSpectrum } from './paper-spectrum';

export interface DyeLightParts {
  dyes: DyeSetId;
  paper: PaperSpectrum;
  light: LightId;
  /** The light whose ultraviolet excites the brightener where that is another one. */
  ultraviolet?: LightId;
}

/** Mean peak density up to which a grey is taken to be partly bare paper, of which nothing was measured to depart. */
const TOE = 0.12;

/**
 * Change of L*, a*, b* from D50 to another light of a print with these amounts of dye, written into `out`: half way
 * between generic dyes and the scale that was really measured, wherever the two differ. Both are seen with the stray light
 * of that measurement, which dilutes deep greys. Without it the dyes by themselves change up to twice as much in the
 * shadows, and nothing was measured so.
 */
export function dyeLightChange({ dyes: id, paper, light, ultraviolet }: DyeLightParts) {
  const dyes = dyeSet(id).mean;
  const daylight = dyePrint({ dyes, paper, flare: STRAY, light: 'D50' });
  const lit = dyePrint({ dyes, paper, flare: STRAY, light, ultraviolet });
  const departure = measuredDeparture(id, dyes, light);
  const before = new Float64Array(3);
  return (amounts: ArrayLike<number>, out: Float64Array): Float64Array => {
    daylight.lab(amounts, before);
    lit.lab(amounts, out);
    const { a, b } = departure(before[0]);
    const inked = Math.min(1, Math.max(0, (amounts[0] + amounts[1] + amounts[2]) / 3 / TOE));
    out[0] -= before[0];
    out[1] += (a / 2) * inked - before[1];
    out[2] += (b / 2) * inked - before[2];
    return out;
  };
}

import type { AB } from '../../shared/forecast';
import type { LightId } from '../../shared/target';
import type { GreyAim } from '../aim';
import { amountsFor, type DyePrint, dyePrint } from './dye-print';
import { greyOf } from './dye-scale';
import { type DyeSetId, type Dyes, dyeSet, dyeVariants } from './dyes';
import { measuredDeparture } from './measured-scale';
import type { PaperSpectrum } from './paper-spectrum';

/** L* of the greys for which the spread is worked out. */
const KNOTS = [10, 20, 30, 40, 50, 60, 70, 80, 90];

export interface DyeSpreadParts {
  dyes: DyeSetId;
  paper: PaperSpectrum;
  /** L* of the paper. */
  white: number;
  flare: number;
  aim: GreyAim;
  light: LightId;
}

/**
 * How unsure it is what a grey of dyes, neutral under D50, becomes under another light: one SD of a* and b* by print
 * lightness. Two causes: the published dye sets differ from their mean, and the model differs from a scale that was
 * really measured, in size and under some lights in sign: the forecast stands between the two, and two sources that
 * differ by d have a standard deviation of d / sqrt 2. None on bare paper and in full black; none under D50, where all
 * are calibrated.
 */
export function dyeLightSpread(parts: DyeSpreadParts): (L: number) => AB {
  const { light, white } = parts;
  const none = { a: 0, b: 0 };
  if (light === 'D50') return () => none;
  const departure = measuredDeparture(parts.dyes, dyeSet(parts.dyes).mean, light);
  const sets = setSpread(parts);
  const knots = KNOTS.map((L, i) => {
    const { a, b } = departure(L);
    return { a: Math.hypot(sets[i].a, a * Math.SQRT1_2), b: Math.hypot(sets[i].b, b * Math.SQRT1_2) };
  });
  const at = [0, ...KNOTS, Math.max(white, KNOTS[KNOTS.length - 1] + 1)];
  const spread = [none, ...knots, none];
  return L => interpolate(at, spread, L);
}

/** Spread over dye sets at each knot: every variant is calibrated to the same grey before the light changes. */
function setSpread({ dyes: id, paper, flare, aim, light, white }: DyeSpreadParts): AB[] {
  const set = dyeSet(id);
  const of = (dyes: Dyes) => ({
    daylight: dyePrint({ dyes, paper, flare, light: 'D50' }),
    other: dyePrint({ dyes, paper, flare, light }),
  });
  const mean = of(set.mean);
  const variants = dyeVariants(set).map(of);
  const [grey, usual, lab] = [new Float64Array(3), new Float64Array(3), new Float64Array(3)];
  return KNOTS.map(knot => {
    const L = Math.min(knot, white - 1);
    const start = Math.log10(100 / (L + 5));
    const amounts = greyOf(mean.daylight, L, aim, Float64Array.of(start, start, start));
    mean.daylight.lab(amounts, grey);
    mean.other.lab(amounts, usual);
    const moves = variants.map(({ daylight, other }) => {
      const own = amountsOrNone(daylight, grey, amounts);
      if (own) other.lab(own, lab);
      return own ? { a: lab[1] - usual[1], b: lab[2] - usual[2] } : { a: 0, b: 0 };
    });
    return { a: Math.hypot(...moves.map(move => move.a)), b: Math.hypot(...moves.map(move => move.b)) };
  });
}

/** A variant that cannot print a grey at all says nothing about it. */
function amountsOrNone(print: DyePrint, lab: ArrayLike<number>, start: Float64Array): Float64Array | null {
  try {
    return amountsFor(print, lab, start);
  } catch {
    return null;
  }
}

/** Linear between knots (`x` rising), constant beyond. */
function interpolate(x: readonly number[], y: readonly AB[], at: number): AB {
  if (at <= x[0]) return y[0];
  const i = x.findIndex(value => value >= at);
  if (i < 0) return y[y.length - 1];
  const t = (at - x[i - 1]) / (x[i] - x[i - 1]);
  return { a: y[i - 1].a + t * (y[i].a - y[i - 1].a), b: y[i - 1].b + t * (y[i].b - y[i - 1].b) };
}

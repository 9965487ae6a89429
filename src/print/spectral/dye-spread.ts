import type { AB } from '../../shared/forecast';
import type { GreyAim } from '../aim';
import { type DyeLightParts, dyeLightChange } from './dye-light';
import { amountsFor, type DyePrint, dyePrint } from './dye-print';
import { greyOf } from './dye-scale';
import { type Dyes, dyeSet, dyeVariants } from './dyes';
import { measuredDeparture } from './measured-scale';
import { STRAY } from './neutral-target';

/** L* of the greys for which the spread is worked out. */
const KNOTS = [10, 20, 30, 40, 50, 60, 70, 80, 90];

export interface DyeSpreadParts extends DyeLightParts {
  /** L* of the paper. */
  white: number;
  flare: number;
  aim: GreyAim;
  /** The dyes are another process's, for want of its own. */
  borrowed: boolean;
}

/** Borrowed dyes are this much less sure (own choice). */
const BORROWED = 2;

/**
 * How unsure it is what a grey of dyes, neutral under D50, becomes under another light: one SD of a* and b* by print
 * lightness. Two causes: the published dye sets differ from their mean, and the model differs from a scale that was
 * really measured, in size and under some lights in sign: the forecast stands between the two, and two sources that
 * differ by d have a standard deviation of d / sqrt 2. Of borrowed dyes both count twice, all of the change itself is in
 * doubt, as for inks that borrow their spectra, and no hue is likelier than another. None on bare paper and in full black; none under D50, where all
 * are calibrated.
 */
export function dyeLightSpread(parts: DyeSpreadParts): (L: number) => AB {
  const { dyes, light, white, borrowed } = parts;
  const none = { a: 0, b: 0 };
  if (light === 'D50') return () => none;
  const departure = measuredDeparture(dyes, dyeSet(dyes).mean, light);
  const knots = knotsOf(parts).map(({ strayedL, sets, change }) => {
    const apart = departure(strayedL);
    const own = {
      a: Math.hypot(sets.a, apart.a * Math.SQRT1_2),
      b: Math.hypot(sets.b, apart.b * Math.SQRT1_2),
    };
    if (!borrowed) return own;
    const unknown = Math.hypot(BORROWED * own.a, BORROWED * own.b, change.a, change.b);
    return { a: unknown, b: unknown };
  });
  const at = [0, ...KNOTS, Math.max(white, KNOTS[KNOTS.length - 1] + 1)];
  const spread = [none, ...knots, none];
  return L => interpolate(at, spread, L);
}

interface Knot {
  /** L* of the grey with the stray light of the measurement. */
  strayedL: number;
  /** Spread over dye sets: every variant is calibrated to the same grey before the light changes. */
  sets: AB;
  /** What the light does to the tint, beside the paper in the same light. */
  change: AB;
}

function knotsOf(parts: DyeSpreadParts): Knot[] {
  const { dyes: id, paper, flare, aim, light, ultraviolet, white } = parts;
  const set = dyeSet(id);
  const of = (dyes: Dyes) => ({
    calibrated: dyePrint({ dyes, paper, flare, light: 'D50' }),
    daylight: dyePrint({ dyes, paper, flare: STRAY, light: 'D50' }),
    other: dyePrint({ dyes, paper, flare: STRAY, light, ultraviolet }),
  });
  const mean = of(set.mean);
  const variants = dyeVariants(set).map(of);
  const changeOf = dyeLightChange(parts);
  const [grey, before, after] = [new Float64Array(3), new Float64Array(3), new Float64Array(3)];
  const moveOf = ({ daylight, other }: typeof mean, amounts: Float64Array): AB => {
    daylight.lab(amounts, before);
    other.lab(amounts, after);
    return { a: after[1] - before[1], b: after[2] - before[2] };
  };
  const bare = Float64Array.from(changeOf([0, 0, 0], after));
  return KNOTS.map(knot => {
    const L = Math.min(knot, white - 1);
    const start = Math.log10(100 / (L + 5));
    const amounts = greyOf(mean.calibrated, L, aim, Float64Array.of(start, start, start));
    mean.calibrated.lab(amounts, grey);
    const usual = moveOf(mean, amounts);
    const strayedL = before[0];
    const moves = variants.map(variant => {
      const own = amountsOrNone(variant.calibrated, grey, amounts);
      if (!own) return { a: 0, b: 0 };
      const move = moveOf(variant, own);
      return { a: move.a - usual.a, b: move.b - usual.b };
    });
    const change = changeOf(amounts, after);
    return {
      strayedL,
      sets: { a: Math.hypot(...moves.map(({ a }) => a)), b: Math.hypot(...moves.map(({ b }) => b)) },
      change: { a: change[1] - aim.share(L) * bare[1], b: change[2] - aim.share(L) * bare[2] },
    };
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

import { type GreyAim, greyAim } from '../aim';
import type { PrintModel } from '../model';

/** How much of a grey a separation gives to black. */
export interface BlackGeneration {
  id: 'light' | 'medium' | 'heavy' | 'profile';
  label: string;
  /** Among separations in use: own guess. */
  weight: number;
  /** Black (0-1) for a grey that `alone` (0-1) of black would print without other inks. */
  black(alone: number): number;
}

/** Own choice of three, from a black that only deepens the shadows to one that carries the picture. */
export const blackGenerations: readonly BlackGeneration[] = [
  {
    id: 'light',
    label: 'coloured inks, black in the shadows',
    weight: 0.3,
    black: alone => 0.6 * alone ** 6 + 0.3 * alone ** 30,
  },
  {
    id: 'medium',
    label: 'coloured inks and black from the lights on',
    weight: 0.45,
    black: alone => 0.62 * alone ** 2 + 0.3 * alone ** 30,
  },
  { id: 'heavy', label: 'mostly black ink', weight: 0.25, black: alone => 0.93 * alone },
];

/** The one that stands for all where one has to. */
export const usualGeneration = (generations: readonly BlackGeneration[]): BlackGeneration =>
  generations.find(({ id }) => id === 'medium') ?? generations[0];

/** Inks of the neutral axis of a condition, from paper to the darkest grey within the ink limit. */
export interface NeutralAxis {
  /** Print lightness, falling. */
  L: Float64Array;
  /** C, M, Y, K in 0-1, four a step. */
  inks: Float64Array;
  /** L* of the darkest grey. */
  black: number;
}

const STEP = 1.25;
/** Usual limit of black in separations (96 % in published profiles). */
const MOST_BLACK = 0.96;

/**
 * Solves C, M, Y for the grey aim at every lightness, K given by the generation, until the ink limit (percent) or the
 * inks themselves end. Newton on the model's own colour; a step that does not meet the aim within 0.3 ends the axis.
 */
export function neutralAxis(model: PrintModel, generation: BlackGeneration, inkLimit: number): NeutralAxis {
  if (model.dimensions !== 4) throw new Error('a press that takes no inks has no separation');
  const solver = neutralSolver(model);
  const steps: { L: number; inks: number[] }[] = [{ L: model.white[0], inks: [0, 0, 0, 0] }];
  let guess = [0, 0, 0, 0];
  let pace = STEP;
  for (let L = model.white[0] - pace; L > 0 && pace > 0.1; ) {
    const inks = within(inkLimit / 100, generation.black(solver.blackFor(L)), k => solver.solve(L, k, guess));
    if (inks) {
      steps.push({ L, inks });
      guess = inks;
      L -= pace;
    } else {
      // the axis ends between here and the last step: come closer in smaller steps
      L += pace / 2;
      pace /= 2;
    }
  }
  return {
    L: Float64Array.from(steps, step => step.L),
    inks: Float64Array.from(steps.flatMap(step => step.inks)),
    black: steps[steps.length - 1].L,
  };
}

/** The least black from `k` on whose grey stays within the limit; null where there is none. */
function within(limit: number, k: number, solve: (k: number) => number[] | null): number[] | null {
  for (let black = k; black <= Math.max(k, MOST_BLACK); black += 0.02) {
    const inks = solve(black);
    if (inks && total(inks) <= limit) return inks;
  }
  return null;
}

/** Inks of a print lightness; darker than the axis is its black, lighter its paper. Writes C, M, Y, K. */
export function inksOnAxis(axis: NeutralAxis, L: number, out: Float64Array): void {
  const last = axis.L.length - 1;
  let i = 0;
  while (i < last - 1 && axis.L[i + 1] > L) i++;
  const t = Math.min(1, Math.max(0, (axis.L[i] - L) / (axis.L[i] - axis.L[i + 1])));
  for (let ink = 0; ink < 4; ink++)
    out[ink] = axis.inks[i * 4 + ink] + t * (axis.inks[(i + 1) * 4 + ink] - axis.inks[i * 4 + ink]);
}

const total = (inks: readonly number[]) => inks[0] + inks[1] + inks[2] + inks[3];

function neutralSolver(model: PrintModel) {
  const lab = new Float64Array(3);
  const at = (inks: ArrayLike<number>) => {
    model.lab(inks, null, lab);
    return [lab[0], lab[1], lab[2]];
  };
  const blackRamp = Array.from({ length: 101 }, (_, i) => at([0, 0, 0, i / 100])[0]);
  const aim: GreyAim = greyAim(model.white, at([1, 1, 1, 0])[0]);

  /** K that prints this lightness alone; 1 where black alone is not dark enough. */
  function blackFor(L: number): number {
    let i = 0;
    while (i < 100 && blackRamp[i + 1] > L) i++;
    if (i === 100) return 1;
    return (i + (blackRamp[i] - L) / (blackRamp[i] - blackRamp[i + 1])) / 100;
  }

  function solve(L: number, k: number, start: readonly number[]): number[] | null {
    const inks = [start[0], start[1], start[2], k];
    const goal = [L, aim.a(L), aim.b(L)];
    for (let round = 0; round < 12; round++) {
      const now = at(inks);
      const miss = goal.map((value, i) => value - now[i]);
      if (Math.hypot(...miss) < 0.01) return inks;
      const h = 0.01;
      const columns = [0, 1, 2].map(ink => {
        const step = inks[ink] > 0.5 ? -h : h;
        const moved = [...inks];
        moved[ink] += step;
        return at(moved).map((value, i) => (value - now[i]) / step);
      });
      const move = solve3(columns, miss);
      if (!move) return null;
      for (let ink = 0; ink < 3; ink++)
        inks[ink] = Math.min(1, Math.max(0, inks[ink] + Math.max(-0.2, Math.min(0.2, move[ink]))));
    }
    const end = at(inks);
    return Math.hypot(goal[0] - end[0], goal[1] - end[1], goal[2] - end[2]) < 0.3 ? inks : null;
  }

  return { blackFor, solve };
}

/** Solves three equations by Cramer's rule; `columns[j][i]` is the coefficient of unknown j in equation i. */
function solve3(columns: readonly number[][], right: readonly number[]): number[] | null {
  const [p, q, r] = columns;
  const det = (a: readonly number[], b: readonly number[], c: readonly number[]) =>
    a[0] * (b[1] * c[2] - b[2] * c[1]) -
    b[0] * (a[1] * c[2] - a[2] * c[1]) +
    c[0] * (a[1] * b[2] - a[2] * b[1]);
  const whole = det(p, q, r);
  if (Math.abs(whole) < 1e-9) return null;
  return [det(right, q, r) / whole, det(p, right, r) / whole, det(p, q, right) / whole];
}

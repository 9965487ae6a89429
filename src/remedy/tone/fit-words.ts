// no-unit-test: fit.test.ts reads its sentences
import type { PrintedTones } from '../../print/printed-tones';
import { processOf } from '../../print/processes';
import { LOST } from '../../print/range';
import type { LightnessCurve } from '../../shared/remedy';
import type { Target } from '../../shared/target';
import { curveAt } from './curve';
import type { FitStrength } from './fit';

/** Tones print dark where they miss their place between black and paper by more. */
const DARK = 1;

/** What a fit does in print, and what it rests on. */
export function fitWords(
  target: Target,
  tones: PrintedTones,
  curve: LightnessCurve | null,
  histogram: readonly number[] | null,
  { lighten }: FitStrength,
): string[] {
  const { black, white, printed, proportional } = tones;
  const lost = (change: (L: number) => number) =>
    printed.filter((_, L) => (histogram ? histogram[L] > 0 : true) && at(printed, change(L)) < black + LOST)
      .length;
  const before = lost(L => L);
  const told = [
    `${processOf(target.process).name} prints from L* ${black.toFixed(0)} to ${white.toFixed(0)}${groundOf(tones)}.`,
  ];
  if (curve) {
    const after = lost(L => curveAt(curve, L));
    told.push(
      `Of ${histogram ? "the picture's steps of L*" : 'the 101 whole steps of L*, of which no picture need hold all'}, ${before} would print like black, and ${after} do so with the curve.`,
    );
  } else told.push('Tones can be told from black as they are: no curve is needed.');
  const darkest = Math.max(...printed.map((L, i) => proportional[i] - L));
  if (lighten > 0)
    told.push(
      darkest >= DARK
        ? `Middle tones print up to L* ${darkest.toFixed(0)} too dark, which the curve answers.`
        : 'Nothing shows that it prints dark: nothing was lightened for that.',
    );
  return told;
}

function groundOf({ basis, ways }: PrintedTones): string {
  const mean = ways > 1 ? `, the mean of ${ways} ways that a house may take` : '';
  switch (basis) {
    case 'generic':
      return ` by the forecast: a guess about such processes, not your printer${mean}`;
    case 'data':
      return ` by public press data: such a process in general, not your printer${mean}`;
    case 'profile':
      return ` by the print house's profile${mean}`;
    case 'record':
      return ', its black as read from prints of this house, the tones above it by the forecast';
  }
}

/** A scale's value between its whole steps. */
const at = (scale: readonly number[], L: number) => curveAt(scale, L);

// no-unit-test: fit.test.ts reads the table
import type { PrintedTones } from '../../print/printed-tones';
import type { LightnessCurve } from '../../shared/remedy';
import { curveAt } from './curve';

/** One line of a curve as it is shown: L* everywhere. */
export interface ShownTone {
  /** In the file. */
  from: number;
  /** In the converted file. */
  to: number;
  /** In print, by the forecast: as the file is, and converted. */
  printedAsIs: number;
  printed: number;
}

/** Close together in the shadows, where a curve does most. */
const STEPS = [0, 2, 4, 6, 8, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100];

/** A curve as a table, for text and JSON. Null shows what prints without one. */
export function shownCurve(curve: LightnessCurve | null, { printed }: PrintedTones): ShownTone[] {
  return STEPS.map(from => {
    const to = curve ? curveAt(curve, from) : from;
    return {
      from,
      to: tenth(to),
      printedAsIs: tenth(curveAt(printed, from)),
      printed: tenth(curveAt(printed, to)),
    };
  });
}

const tenth = (L: number) => Math.round(L * 10) / 10;

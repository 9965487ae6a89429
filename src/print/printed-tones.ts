import type { Basis } from '../shared/forecast';
import type { GreyEncoding, Target } from '../shared/target';
import { forecast } from './forecast';
import { printLightness } from './handling';
import { pressOf } from './press';
import { rescaled } from './record/black';
import { restated } from './restated';

/** How a scale of greys comes out on a target. */
export interface PrintedTones {
  /** Print lightness of every whole L* of the file, 0 to 100. */
  printed: number[];
  /**
   * The same of a conversion that keeps all tones in proportion, from the process's black to its paper (relative
   * colorimetry with black point compensation): what is darker than it is printed dark.
   */
  proportional: number[];
  /** L* of the darkest black and of the paper. */
  black: number;
  white: number;
  basis: Basis;
  /** Ways that the house may take with such a file; of several, all figures are their mean. */
  ways: number;
}

const ZONES = Array.from({ length: 101 }, (_, L) => ({ L, weight: 1 / 101 }));

/** Greys from black to white, stored soundly in an encoding, as they are expected to print. */
export function printedTones(encoding: GreyEncoding, target: Target): PrintedTones {
  const { zones, range, condition, routes } = forecast(
    restated(encoding, { zones: ZONES, histogram: null }, pressOf(target)),
    target,
  );
  const { white } = range;
  const own = zones.map(({ Lprint }) => Lprint);
  const read = condition.basis === 'record' || range.blackRead;
  const black = read ? range.black : own[0];
  // a record knows the house's black, the tones above it are the model's
  const printed = read ? own.map(rescaled(own[0], black, white)) : own;
  const proportional = ZONES.map(({ L }) => printLightness(L, white, printed[0]));
  return { printed, proportional, black, white, basis: condition.basis, ways: routes?.length ?? 1 };
}

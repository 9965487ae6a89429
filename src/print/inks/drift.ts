import type { AB } from '../../shared/forecast';
import type { Drift } from '../model';

/** Scatter of a press, one standard deviation. */
export interface InkScatter {
  /** Tone value of each ink, percent at mid-tone: over orders, and over the pages of one order. */
  tone: { order: number; page: number };
  /** Shade of the black ink, CIELAB of its solid, from one house to the next. */
  blackShade: AB;
  /** How far houses differ in the greys that coloured inks make, beyond tone value: CIELAB. */
  colouredGrey: AB;
}

/** The causes in the order in which a model takes them: C, M, Y, K, black shade a*, b*. */
export function inkDrifts({ tone, blackShade }: InkScatter): Drift[] {
  return [
    ...['cyan', 'magenta', 'yellow', 'black'].map(name => ({
      name,
      unit: '% tone value',
      house: 0,
      ...tone,
    })),
    { name: 'black shade a*', unit: 'CIELAB of the solid', house: blackShade.a, order: 0, page: 0 },
    { name: 'black shade b*', unit: 'CIELAB of the solid', house: blackShade.b, order: 0, page: 0 },
  ];
}

/**
 * Tone value after a drift of `percent` at mid-tone. Nothing moves at paper and solid; a parabola between, so that 4 %
 * at the mid-tone is 3 % at the three-quarter tone: the proportion of ISO 12647-2:2013's own tolerances (from memory).
 */
export function driftedTone(value: number, percent: number): number {
  const moved = value + (percent / 100) * 4 * value * (1 - value);
  return moved < 0 ? 0 : Math.min(moved, 1);
}

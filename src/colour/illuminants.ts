import type { LightId } from '../shared/target';
import visibleText from './data/cie_illuminants_5nm.csv';
import ultravioletText from './data/cie_illuminants_uv_300-780_5nm.csv';
import cmfText from './data/cie1931_2deg_cmf_5nm.csv';
import { parseTable } from './table';

/** Where all sums run: 380-780 nm in steps of 5 (CIE 015:2018, 7.1 allows 5 nm for all but the most exact work). */
export const FROM = 380;
export const STEP = 5;
export const COUNT = 81;

const visible = parseTable(visibleText);
const cmf = parseTable(cmfText);
const first = cmf.column('nm').indexOf(FROM);

/** Colour matching functions of the CIE 1931 standard observer (2 degrees) on that grid. */
export const observer = (['xbar', 'ybar', 'zbar'] as const).map(name =>
  cmf.column(name).slice(first, first + COUNT),
) as [Float64Array, Float64Array, Float64Array];

const distributions = new Map<LightId, Float64Array>();

/** Relative spectral power distribution on that grid. */
export function distribution(light: LightId): Float64Array {
  let known = distributions.get(light);
  if (!known) distributions.set(light, (known = visible.column(light)));
  return known;
}

export const ULTRAVIOLET_FROM = 300;

/**
 * The same on 300-780 nm, steps of 5, in the units of `distribution`. D50, D65 and A by their tables. Lamps whose
 * tables begin at 380 nm are dark below: certain for white LEDs, which hold no ultraviolet, an assumption for tubes.
 */
export function distributionWithUltraviolet(light: LightId): Float64Array {
  const table = parseTable(ultravioletText);
  if (table.columns.includes(light)) return table.column(light);
  const out = new Float64Array((FROM - ULTRAVIOLET_FROM) / STEP + COUNT);
  out.set(distribution(light), (FROM - ULTRAVIOLET_FROM) / STEP);
  return out;
}

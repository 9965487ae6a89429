import { distribution, distributionWithUltraviolet, STEP, ULTRAVIOLET_FROM } from '../../colour/illuminants';
import { parseTable } from '../../colour/table';
import type { LightId } from '../../shared/target';
import factorsText from '../data/oba_radiance_factors.csv';
import type { Brightener } from '../papers';
import { GRID, spectraIn } from './sampling';

/**
 * How much brightener a paper of each class holds, as a share of the strongly brightened white of the measured factors.
 * That white's D65 brightness falls by 24 without ultraviolet (ISO 15397's difference, taken here as the mean radiance
 * factor about 457 nm); each class stands at about the middle of its range: none 0, faint 2, low 6, moderate 11, and
 * high 17 (open upwards, own choice).
 */
export const AMOUNT: Record<Brightener, number> = {
  none: 0,
  faint: 2 / 24,
  low: 6 / 24,
  moderate: 11 / 24,
  high: 17 / 24,
};

/**
 * Excitation by wavelength: half a bell on either side. Fitted to the measured factors under D50, D65 and A and to what
 * the full bispectral matrices give under FL2, FL11 and white LEDs (this project's own computation).
 */
const PEAK = 365;
const BELOW = 15;
const ABOVE = 30;
/** The measured factors without ultraviolet were cut off here ... */
const CUT = 420;
/** ... but the brightener takes up light a little beyond, where its own emission begins. */
const LAST = 435;

const excitation = (nm: number) => Math.exp(-0.5 * ((nm - PEAK) / (nm < PEAK ? BELOW : ABOVE)) ** 2);

/** What a light excites, in the units of the CIE tables. */
function excited(light: LightId, from: number, to: number): number {
  const power = distributionWithUltraviolet(light);
  let sum = 0;
  for (let nm = from; nm < to; nm += STEP) sum += excitation(nm) * power[(nm - ULTRAVIOLET_FROM) / STEP];
  return sum;
}

/** The strongly brightened white: reflectance alone, what it emits in the units of D50's table, and the factors. */
const reference = makeReference();

function makeReference() {
  const table = parseTable(factorsText);
  const samples = table.labels('sample');
  const conditions = table.labels('condition');
  const spectra = spectraIn(table);
  const measured = (condition: string) =>
    spectra[samples.findIndex((sample, i) => sample === 'oba_white_A' && conditions[i] === condition)];
  const m1 = measured('M1');
  const daylight = onGrid('D50');
  // Nothing was measured below the cut; there the factors with ultraviolet hold no emission to speak of.
  const m2 = measured('M2').map((value, i) =>
    Number.isNaN(value) ? Math.min(m1[i], measured('M2')[2]) : value,
  );
  const tail = excited('D50', CUT, LAST) / excited('D50', ULTRAVIOLET_FROM, CUT);
  const reflectance = m2.map((value, i) => value - tail * (m1[i] - value));
  const emission = m1.map((value, i) => Math.max(0, value - reflectance[i]) * daylight[i]);
  return { reflectance, emission, D50: m1, D65: measured('D65'), A: measured('M0') };
}

function onGrid(light: LightId): Float64Array {
  const power = distribution(light);
  return Float64Array.from({ length: GRID.count }, (_, i) => power[(GRID.from + i * GRID.step - 380) / STEP]);
}

const excesses = new Map<LightId, Float64Array>();

/**
 * What the strongly brightened white adds to its reflectance under a light: radiance factor, 0-1 and above, on `GRID`.
 * D50, D65 and A as measured; other lights by what they excite.
 */
export function brightenerExcess(light: LightId): Float64Array {
  let excess = excesses.get(light);
  if (!excess) excesses.set(light, (excess = makeExcess(light)));
  return excess;
}

function makeExcess(light: LightId): Float64Array {
  if (light === 'D50' || light === 'D65' || light === 'A')
    return reference[light].map((value, i) => Math.max(0, value - reference.reflectance[i]));
  const share = excited(light, ULTRAVIOLET_FROM, LAST) / excited('D50', ULTRAVIOLET_FROM, LAST);
  const power = onGrid(light);
  return reference.emission.map((value, i) => (power[i] > 0 ? (value * share) / power[i] : 0));
}

/** Share of violet light that the brightener of that white takes up (0-1, on `GRID`), beside what it gives back. */
export const brightenerAbsorption: Float64Array = reference.reflectance.map((value, i, all) =>
  GRID.from + i * GRID.step < 450 ? Math.max(0, 1 - value / all[6]) : 0,
);

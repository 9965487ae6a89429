import { spectralView } from '../../colour/spectra';
import type { AB } from '../../shared/forecast';
import type { LightId } from '../../shared/target';
import { amountsFor, dyePrint } from './dye-print';
import type { Dyes } from './dyes';
import { neutralTarget, STRAY } from './neutral-target';
import { GRID } from './sampling';

/** A grey of the scale: under D50, how the measured spectrum moves under a light, and how dyes of the same colour do. */
export interface ScaleStep {
  lab: Float64Array;
  measured: Float64Array;
  modelled: Float64Array;
}

/**
 * The neutral scale of a target on chromogenic paper, measured: each step beside the model's dyes on the same paper,
 * in the amounts that match it under D50. From the lightest step to the darkest.
 */
export function measuredScale(dyes: Dyes, light: LightId): ScaleStep[] {
  const { paper, greys } = neutralTarget();
  const parts = { dyes, paper: { base: paper, amount: 0 }, flare: STRAY };
  const daylight = dyePrint({ ...parts, light: 'D50' });
  const other = dyePrint({ ...parts, light });
  const [d50, view] = [spectralView('D50', GRID), spectralView(light, GRID)];
  let amounts = new Float64Array(3);
  const steps = greys.map(spectrum => {
    const lab = d50.lab(spectrum, new Float64Array(3));
    const move = (to: Float64Array) => to.map((value, i) => value - lab[i]);
    amounts = Float64Array.from(amountsFor(daylight, lab, amounts));
    return {
      lab,
      measured: move(view.lab(spectrum, new Float64Array(3))),
      modelled: move(other.lab(amounts, new Float64Array(3))),
    };
  });
  return steps.sort((one, other) => other.lab[0] - one.lab[0]);
}

const STEP = 2.5;
const COUNT = 100 / STEP + 1;
const departures = new Map<string, Float64Array>();

/**
 * How much further than the model the measured greys move from D50 to a light: a*, b* by L*, nothing on paper as white as
 * theirs and in full black. `name` stands for the dyes in what is kept.
 */
export function measuredDeparture(name: string, dyes: Dyes, light: LightId): (L: number) => AB {
  const key = `${name} ${light}`;
  let table = departures.get(key);
  if (!table) departures.set(key, (table = departureTable(dyes, light)));
  const known = table;
  return L => {
    const position = Math.min(COUNT - 1, Math.max(0, L / STEP));
    const k = Math.min(COUNT - 2, Math.floor(position));
    const t = position - k;
    const of = (i: number) => (1 - t) * known[k * 2 + i] + t * known[k * 2 + 2 + i];
    return { a: of(0), b: of(1) };
  };
}

function departureTable(dyes: Dyes, light: LightId): Float64Array {
  const none = { L: 0, a: 0, b: 0 };
  const points = [
    { ...none, L: 100 },
    ...measuredScale(dyes, light).map(({ lab, measured, modelled }) => ({
      L: lab[0],
      a: measured[1] - modelled[1],
      b: measured[2] - modelled[2],
    })),
    none,
  ];
  const table = new Float64Array(COUNT * 2);
  for (let k = 0; k < COUNT; k++) {
    const L = Math.min(100, k * STEP);
    const i = Math.max(
      1,
      points.findIndex(point => point.L <= L),
    );
    const [light, dark] = [points[i - 1], points[i]];
    const t = (L - dark.L) / (light.L - dark.L);
    table[k * 2] = dark.a + t * (light.a - dark.a);
    table[k * 2 + 1] = dark.b + t * (light.b - dark.b);
  }
  return table;
}

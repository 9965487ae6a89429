// no-unit-test: test/report/sheet/index.test.ts checks its scales, tones.test.ts what they show
import { pressOf } from '../../print/press';
import type { Forecast } from '../../shared/forecast';
import type { PossibleOrder, Sheet } from '../../shared/sheet';
import type { Target } from '../../shared/target';
import { ORDERS } from '../page/orders';
import { screenColour } from './colour';
import { drawsOf } from './draws';
import { toneScale } from './tones';

/** File lightness of the patches of a strip, from paper to black. */
const LIGHTNESS = Array.from({ length: 26 }, (_, i) => 100 - 4 * i);

export const fileScale: Sheet['scale'] = {
  lightness: LIGHTNESS,
  colours: LIGHTNESS.map(L => screenColour(L, 0, 0)),
};

/** The ten possible orders of a series under one forecast, as a screen shows them beside `fileScale`. */
export function possibleOrders(forecast: Forecast, target: Target, series: number): PossibleOrder[] {
  const { aim } = pressOf(target);
  const print = toneScale(forecast);
  return drawsOf(series, ORDERS).map(draw => {
    const greys = LIGHTNESS.map(L => print(L, draw));
    return {
      alone: greys.map(({ L, a, b }) => screenColour(L, a, b)),
      beside: greys.map(({ L, a, b }) => screenColour(L, a + aim.a(L), b + aim.b(L))),
    };
  });
}

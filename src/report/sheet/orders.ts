// no-unit-test: test/report/sheet/index.test.ts checks its scales, tones.test.ts what they show
import { LIMITS } from '../../print/bands';
import { pressOf } from '../../print/press';
import type { Forecast } from '../../shared/forecast';
import type { PossibleOrder, Sheet } from '../../shared/sheet';
import type { Target } from '../../shared/target';
import { ORDERS } from '../page/orders';
import { screenColour } from './colour';
import { drawsOf } from './draws';
import { type PrintedGrey, toneScale } from './tones';

/** File lightness of the patches of a strip, from paper to black. */
const LIGHTNESS = Array.from({ length: 26 }, (_, i) => 100 - 4 * i);

export const fileScale: Sheet['scale'] = {
  lightness: LIGHTNESS,
  colours: LIGHTNESS.map(L => screenColour(L, 0, 0)),
};

/** Length of a tint in a*, b* from which it is seen by itself: the limit of the band that is called visible. */
const [, VISIBLE] = LIMITS;

/** The ten possible orders of a series under one forecast, as a screen shows them beside `fileScale`. */
export function possibleOrders(forecast: Forecast, target: Target, series: number): PossibleOrder[] {
  const { aim } = pressOf(target);
  const print = toneScale(forecast);
  const onPaper = ({ L, a, b }: PrintedGrey): PrintedGrey => ({ L, a: a + aim.a(L), b: b + aim.b(L) });
  return drawsOf(series, ORDERS).map(draw => {
    const greys = LIGHTNESS.map(L => print(L, draw));
    const seen = (as: (grey: PrintedGrey) => PrintedGrey) =>
      mostly(forecast, L => {
        const { a, b } = as(print(L, draw));
        return Math.hypot(a, b) >= VISIBLE;
      });
    return {
      alone: greys.map(colour),
      beside: greys.map(grey => colour(onPaper(grey))),
      tint: { alone: seen(grey => grey), beside: seen(onPaper) },
    };
  });
}

const colour = ({ L, a, b }: PrintedGrey) => screenColour(L, a, b);

/** Whether something holds on half of the picture or more, by the area of its zones. */
function mostly({ zones }: Forecast, holds: (L: number) => boolean): boolean {
  const area = (list: Forecast['zones']) => list.reduce((sum, { weight }) => sum + weight, 0);
  return area(zones.filter(({ L }) => holds(L))) * 2 >= area(zones);
}

/** `A tint is seen in 2 of these ten.` `toned`: the picture has a tone of its own, so that it is no fault. */
export function tintedWords(
  orders: readonly PossibleOrder[],
  toned: boolean,
): Record<'alone' | 'beside', string> {
  const words = (seen: 'alone' | 'beside') => {
    const n = orders.filter(({ tint }) => tint[seen]).length;
    const many = n === orders.length ? 'all' : n === 0 ? 'none' : n;
    return `${toned ? 'Its tone' : 'A tint'} is seen in ${many} of these ten`;
  };
  return {
    alone: `${words('alone')}, drawn from all possible orders.`,
    beside: `${words('beside')}, beside a pure white page.`,
  };
}

import { pressOf } from '../../print/press';
import type { Forecast } from '../../shared/forecast';
import type { PossibleOrder, Sheet } from '../../shared/sheet';
import type { Target } from '../../shared/target';
import { ORDERS } from '../page/orders';
import { screenColour } from './colour';
import type { Draw } from './draws';
import { sampleOf } from './sample';
import { tintedOf } from './tinted';
import { type PrintedGrey, toneScale } from './tones';

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
  const onPaper = ({ L, a, b }: PrintedGrey): PrintedGrey => ({ L, a: a + aim.a(L), b: b + aim.b(L) });
  const tinted = (draws: readonly Draw[], as = (grey: PrintedGrey) => grey) =>
    tintedOf(
      forecast,
      draws.map(draw => L => as(print(L, draw))),
    );
  const draws = sampleOf(
    series,
    ORDERS,
    ORDERS * forecast.tint.seen,
    sample => tinted(sample).filter(Boolean).length,
  );
  const [alone, beside] = [tinted(draws), tinted(draws, onPaper)];
  return draws.map((draw, i) => {
    const greys = LIGHTNESS.map(L => print(L, draw));
    const seen = { alone: greys, beside: greys.map(onPaper) };
    return {
      alone: seen.alone.map(colour),
      beside: seen.beside.map(colour),
      lab: { alone: seen.alone.map(triple), beside: seen.beside.map(triple) },
      tint: { alone: alone[i], beside: beside[i] },
    };
  });
}

const colour = ({ L, a, b }: PrintedGrey) => screenColour(L, a, b);
const triple = ({ L, a, b }: PrintedGrey): [number, number, number] => [L, a, b];

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

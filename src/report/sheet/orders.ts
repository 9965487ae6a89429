import { type Press, pressOf } from '../../print/press';
import type { Forecast } from '../../shared/forecast';
import type { PossibleOrder, Sheet } from '../../shared/sheet';
import type { Target } from '../../shared/target';
import { ORDERS } from '../page/orders';
import { screenColour } from './colour';
import { type Draw, drawsOf } from './draws';

/** File lightness of the patches of a strip, from paper to black. */
const LIGHTNESS = Array.from({ length: 26 }, (_, i) => 100 - 4 * i);
export const fileScale: Sheet['scale'] = {
  lightness: LIGHTNESS,
  colours: LIGHTNESS.map(L => screenColour(L, 0, 0)),
};

/** The ten possible orders of a series under one forecast, as a screen shows them beside `fileScale`. */
export function possibleOrders(forecast: Forecast, target: Target, series: number): PossibleOrder[] {
  const press = pressOf(target);
  const tones = tonesOf(forecast, press);
  return drawsOf(series, ORDERS).map(draw => {
    const prints = LIGHTNESS.map(L => printed(at(tones, L), draw));
    return {
      alone: prints.map(({ L, a, b }) => screenColour(L, a, b)),
      beside: prints.map(({ L, a, b }) => screenColour(L, a + press.aim.a(L), b + press.aim.b(L))),
    };
  });
}

/** How one lightness of the file prints: lightness, mean tint, and its spread. */
interface Tone {
  L: number;
  Lprint: number;
  a: number;
  b: number;
  sdA: number;
  sdB: number;
  corr: number;
}

/** The forecast's zones from black to paper; both ends are the print's own, with a black as tinted as the shadows. */
function tonesOf({ zones, range }: Forecast, press: Press): Tone[] {
  const inside = zones
    .map(zone => ({ ...zone, a: zone.a - zone.aimA, b: zone.b - zone.aimB }))
    .filter(zone => zone.L > 0 && zone.L < 100)
    .sort((x, y) => x.L - y.L);
  const bare = { L: 100, Lprint: press.model.white[0], a: 0, b: 0, sdA: 0, sdB: 0, corr: 0 };
  const darkest = inside[0] ?? bare;
  return [{ ...darkest, L: 0, Lprint: Math.min(range.black, darkest.Lprint) }, ...inside, bare];
}

/** Between two tones everything is linear. */
function at(tones: readonly Tone[], L: number): Tone {
  const next = Math.max(
    1,
    tones.findIndex(tone => tone.L >= L),
  );
  const [x, y] = [tones[next - 1], tones[next]];
  const share = y.L > x.L ? (L - x.L) / (y.L - x.L) : 1;
  const mix = (key: keyof Tone) => x[key] + share * (y[key] - x[key]);
  return {
    L,
    Lprint: mix('Lprint'),
    a: mix('a'),
    b: mix('b'),
    sdA: mix('sdA'),
    sdB: mix('sdB'),
    corr: mix('corr'),
  };
}

/** Lightness and tint in one order. One drift moves all tones at once: the same draw, each by its own spread. */
function printed({ Lprint, a, b, sdA, sdB, corr }: Tone, [u, v]: Draw) {
  const across = corr * u + Math.sqrt(Math.max(0, 1 - corr * corr)) * v;
  return { L: Lprint, a: a + sdA * u, b: b + sdB * across };
}

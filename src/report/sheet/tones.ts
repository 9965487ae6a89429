import { wholeSpread } from '../../print/scatter';
import type { Forecast } from '../../shared/forecast';
import type { Draw } from './draws';

/** How one lightness of the file prints: lightness, mean tint (away from the grey aim), and its spread. */
interface Tone {
  /** The file's lightness. */
  L: number;
  Lprint: number;
  a: number;
  b: number;
  sdA: number;
  sdB: number;
  corr: number;
}

/** A grey of one possible order: lightness, and tint away from the grey aim. */
export interface PrintedGrey {
  L: number;
  a: number;
  b: number;
}

/**
 * The forecast as a tone scale: how any lightness of the file prints in a given order. Between the picture's own zones
 * everything is linear; the ends are the bare paper and the print's own black, as tinted as the deepest shadows.
 */
export function toneScale(forecast: Forecast): (L: number, draw: Draw) => PrintedGrey {
  const tones = tonesOf(forecast);
  return (L, draw) => printed(at(tones, L), draw, routeOf(forecast, draw));
}

function tonesOf({ zones, range }: Forecast): Tone[] {
  const inside = zones
    .map(zone => ({ ...zone, a: zone.a - zone.aimA, b: zone.b - zone.aimB }))
    .filter(zone => zone.L > 0 && zone.L < 100)
    .sort((x, y) => x.L - y.L);
  const bare = { L: 100, Lprint: range.white, a: 0, b: 0, sdA: 0, sdB: 0, corr: 0 };
  const darkest = inside[0] ?? bare;
  return [{ ...darkest, L: 0, Lprint: Math.min(range.black, darkest.Lprint) }, ...inside, bare];
}

function at(tones: readonly Tone[], L: number): Tone {
  const above = tones.findIndex(tone => tone.L >= L);
  const [x, y] = above > 0 ? [tones[above - 1], tones[above]] : [tones[0], tones[0]];
  const share = y.L > x.L ? (L - x.L) / (y.L - x.L) : 0;
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

/** One drift moves all tones at once: the same draw, each tone by its own spread. */
function printed({ L, Lprint, a, b, sdA, sdB, corr }: Tone, { u, v }: Draw, route: Departure): PrintedGrey {
  // bare paper is the same by every route
  const share = L >= 100 ? 0 : 1;
  const across = corr * u + Math.sqrt(Math.max(0, 1 - corr * corr)) * v;
  return {
    L: Lprint,
    a: a + share * route.a + route.widerA * sdA * u,
    b: b + share * route.b + route.widerB * sdB * across,
  };
}

/** How the route that this order takes departs from the mean of all: its tint, and its spread as a multiple of theirs. */
interface Departure {
  a: number;
  b: number;
  widerA: number;
  widerB: number;
}

const NONE: Departure = { a: 0, b: 0, widerA: 1, widerB: 1 };

/** An order takes one route, never the mean of several: the draw picks it by the routes' weights. */
function routeOf({ routes = [], tint, spread }: Forecast, { pick }: Draw): Departure {
  const total = routes.reduce((sum, route) => sum + route.weight, 0);
  let left = pick * total;
  for (const route of routes) {
    left -= route.weight;
    if (left > 0) continue;
    const [own, all] = [wholeSpread(route.spread), wholeSpread(spread)];
    return {
      a: route.tint.a - tint.a,
      b: route.tint.b - tint.b,
      widerA: ratio(own.a, all.a),
      widerB: ratio(own.b, all.b),
    };
  }
  return NONE;
}

const ratio = (x: number, y: number) => (y > 0 ? x / y : 1);

import assert from 'node:assert/strict';
import { defaultTarget, forecastValue } from '../../../src/print';
import { visibleShare } from '../../../src/print/bands';
import { drawsOf } from '../../../src/report/sheet/draws';
import { toneScale } from '../../../src/report/sheet/tones';
import type { Forecast } from '../../../src/shared/forecast';

const centre = { u: 0, v: 0, pick: 0.5 };

describe('tone scale of a forecast', () => {
  const forecast = forecastValue({ space: 'rgb', values: [0.5, 0.5, 0.5] }, defaultTarget('silver-halide'));

  it('begins with the bare paper, ends with the print’s own black, and gets darker all the way', () => {
    const print = toneScale(forecast);
    const far = { u: 2, v: -2, pick: 0.9 };
    assert.deepEqual(print(100, far), { L: forecast.range.white, a: 0, b: 0 });
    assert.ok(Math.abs(print(0, far).L - forecast.range.black) < 1e-9);
    for (let L = 96; L >= 0; L -= 4) assert.ok(print(L, far).L < print(L + 4, far).L);
  });

  it('shows the mean tint where nothing drifts, and one SD away what one SD is', () => {
    const print = toneScale(forecast);
    const [zone] = forecast.zones;
    const mean = print(zone.L, centre);
    assert.ok(Math.abs(mean.a - (zone.a - zone.aimA)) < 1e-9);
    assert.ok(Math.abs(print(zone.L, { u: 1, v: 0, pick: 0 }).a - mean.a - zone.sdA) < 1e-9);
  });

  it('shows a visible tint as often as the forecast says', () => {
    const print = toneScale(forecast);
    const draws = Array.from({ length: 200 }, (_, series) => drawsOf(series, 10)).flat();
    const seen = draws.filter(draw => {
      const { a, b } = print(forecast.zones[0].L, draw);
      return Math.hypot(a, b) >= 2;
    });
    assert.ok(Math.abs(seen.length / draws.length - visibleShare(forecast.tint.bands)) < 0.04);
  });

  it('takes one route in each order where the route is not known', () => {
    const unknown: Forecast = {
      ...forecast,
      routes: [
        { ...routeWith(forecast, -4), weight: 0.5 },
        { ...routeWith(forecast, 4), weight: 0.5 },
      ],
    };
    const print = toneScale(unknown);
    const { L } = forecast.zones[0];
    const apart = print(L, { u: 0, v: 0, pick: 0.9 }).b - print(L, { u: 0, v: 0, pick: 0.1 }).b;
    assert.ok(Math.abs(apart - 8) < 1e-9);
  });

  it('drifts in each order as far as its own route does', () => {
    const steady = routeWith(forecast, 0);
    const wild = structuredClone(steady);
    wild.spread.house = { a: 3 * forecast.spread.house.a, b: 0 };
    wild.spread.order = { a: 3 * forecast.spread.order.a, b: 0 };
    wild.spread.page = { a: 3 * forecast.spread.page.a, b: 0 };
    const print = toneScale({
      ...forecast,
      routes: [
        { ...steady, weight: 0.5 },
        { ...wild, weight: 0.5 },
      ],
    });
    const [{ L, a, aimA, b, aimB, sdA }] = forecast.zones;
    const drifted = (pick: number) => print(L, { u: 1, v: 1, pick });
    assert.ok(Math.abs(drifted(0.1).a - (a - aimA) - sdA) < 1e-9);
    assert.ok(Math.abs(drifted(0.9).a - (a - aimA) - 3 * sdA) < 1e-9);
    assert.ok(Math.abs(drifted(0.9).b - (b - aimB)) < 1e-9);
  });
});

const routeWith = (forecast: Forecast, b: number) => ({
  route: 'separated' as const,
  label: '',
  weight: 0,
  Lprint: 50,
  black: 10,
  spread: forecast.spread,
  tint: { ...forecast.tint, b: forecast.tint.b + b },
});

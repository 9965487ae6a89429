import type { AB, Forecast, ForecastZone, RouteForecast, Tint } from '../shared/forecast';
import type { RouteId } from '../shared/target';
import { directionOfHue, hueOf, meanBands, probabilityTowards } from './bands';
import type { Press } from './press';
import { type RouteResult, routeResult } from './route-result';
import { routeOptions } from './routes';
import type { SampledPicture } from './samples';
import { type Covariance, deviations } from './scatter';

/** Forecast of a picture on a press. `route` may be unknown: then every way is worked out and weighed. */
export function forecast(picture: SampledPicture, press: Press, route: RouteId, neutral: boolean): Forecast {
  const options = routeOptions(press.process.signal, route, picture.space, neutral, press.generations);
  const results = options.map(option => routeResult(option, picture, press));
  const weigh = (value: (result: RouteResult) => number) =>
    results.reduce((sum, result) => sum + result.option.weight * value(result), 0);
  const weighAB = (value: (result: RouteResult) => AB): AB => ({
    a: weigh(result => value(result).a),
    b: weigh(result => value(result).b),
  });
  const within = (covariance: (result: RouteResult) => Covariance): Covariance => ({
    aa: weigh(result => covariance(result).aa),
    ab: weigh(result => covariance(result).ab),
    bb: weigh(result => covariance(result).bb),
  });
  const tint = tintOf(results);
  const paper = weighAB(result => result.parts.paper);
  const aimShare =
    Math.hypot(paper.a, paper.b) / (Math.hypot(press.paper.white[1], press.paper.white[2]) || 1);
  return {
    condition: {
      process: press.process.id,
      paper: press.paper.id,
      light: press.light,
      route: options.length === 1 ? options[0].route : route,
      basis: press.basis,
    },
    zones: picture.zones.map((zone, i): ForecastZone => {
      const order = within(result => result.zones[i].scatter.order);
      const page = within(result => result.zones[i].scatter.page);
      const sd = deviations({ aa: order.aa + page.aa, ab: 0, bb: order.bb + page.bb });
      return {
        L: zone.L,
        weight: zone.weight,
        Lprint: weigh(result => result.zones[i].response.Lprint),
        a: weigh(result => result.zones[i].response.a),
        b: weigh(result => result.zones[i].response.b),
        aimA: weigh(result => result.zones[i].response.aimA),
        aimB: weigh(result => result.zones[i].response.aimB),
        sdA: sd.a,
        sdB: sd.b,
        corr: sd.a * sd.b > 0 ? (order.ab + page.ab) / (sd.a * sd.b) : 0,
      };
    }),
    tint,
    absolute: { a: tint.a + paper.a, b: tint.b + paper.b },
    spread: {
      order: deviations(within(result => result.scatter.order)),
      page: deviations(within(result => result.scatter.page)),
      paper: { a: press.paper.spread.a * aimShare, b: press.paper.spread.b * aimShare },
    },
    parts: {
      paper,
      process: weighAB(result => result.parts.process),
      encoding: weighAB(result => result.parts.encoding),
      light: weighAB(result => result.parts.light),
    },
    lightParts: {
      colourants: weighAB(result => result.lightParts.colourants),
      brightener: weighAB(result => result.lightParts.brightener),
    },
    range: {
      black: weigh(result => result.range.black),
      white: press.model.white[0],
      blockedShare: weigh(result => result.range.blockedShare),
    },
    ...(options.length > 1 ? { routes: results.map(routeForecast) } : {}),
    ground: press.model.ground.slice(),
  };
}

/** Bands and direction of one route, or of several weighed: probabilities are averaged, never the ellipses. */
function tintOf(results: readonly RouteResult[]): Tint {
  const total = results.reduce((sum, result) => sum + result.option.weight, 0);
  const mean = (value: (result: RouteResult) => number) =>
    results.reduce((sum, result) => sum + (result.option.weight / total) * value(result), 0);
  const a = mean(result => result.tint.mean.a);
  const b = mean(result => result.tint.mean.b);
  const hue = hueOf(a, b);
  const directionProbability = mean(result => probabilityTowards(result.tint, hue));
  return {
    a,
    b,
    chroma: Math.hypot(a, b),
    hue,
    direction: directionProbability > 0.5 ? directionOfHue(hue) : null,
    directionProbability,
    bands: meanBands(results.map(result => ({ weight: result.option.weight, bands: result.bands }))),
  };
}

const routeForecast = (result: RouteResult): RouteForecast => ({
  route: result.option.route,
  label: result.option.label,
  weight: result.option.weight,
  tint: tintOf([result]),
  spread: { order: deviations(result.scatter.order), page: deviations(result.scatter.page) },
});

import type { AB, Forecast, ForecastZone, RouteForecast, Tint } from '../shared/forecast';
import type { RouteId, Target } from '../shared/target';
import { directionOfHue, hueOf, meanBands, probabilityTowards } from './bands';
import { notesOn } from './notes';
import { type Press, pressOf } from './press';
import { withBlackRead } from './printing';
import { lostBelow } from './range';
import { narrowed } from './record/apply';
import { type ReadBlack, readBlack } from './record/black';
import { readingFor } from './record/reading';
import { likeliest, type RouteResult, routeResults } from './route-result';
import type { SampledPicture } from './samples';
import { deviations, meanScatter, type Scatter, spreadOf, whole } from './scatter';

/**
 * Forecast of a picture on a target. A route that is not known: every way is worked out and weighed. A record of the
 * print house: what was read there narrows the generic forecast.
 */
export function forecast(picture: SampledPicture, target: Target): Forecast {
  const press = pressOf(target);
  const generic = routeResults(picture, press, target.route);
  const notes = notesOn(target, generic);
  const { printRecord } = target;
  if (!printRecord) return { ...assembled(picture, press, generic, [], null), notes };
  const black = readBlack(picture, printRecord, generic, target);
  const results = black ? generic.map(result => withBlack(black.black, result, picture)) : generic;
  const held = readingFor(picture, printRecord, press.process, target);
  if (!held) return { ...assembled(picture, press, results, [NOT_READ], black), notes };
  const seen = narrowed(held, results, picture, target);
  const whole = assembled(picture, press, [seen.result], seen.ground, black);
  const condition = {
    ...whole.condition,
    route: routeTaken(results),
    basis: 'record' as const,
    reading: held.how,
  };
  return { ...whole, notes, condition };
}

/** The same with the darkest black as it was read. */
function withBlack(black: number, result: RouteResult, picture: SampledPicture): RouteResult {
  const printed = result.zones.map(({ response }) => response.Lprint);
  const range = { ...result.range, black, ...lostBelow(picture, printed, black) };
  return { ...result, range };
}

const NOT_READ = 'the record of this print house holds no reading of greys that are stored like these';

const WEIGHTS = 'a guess: how likely each way of the print house is';

/** The route that the file really takes, whatever was asked: several separations are one; a true mixture is not known. */
function routeTaken([first, ...others]: readonly RouteResult[]): RouteId {
  const { route } = first.option;
  return others.every(({ option }) => option.route === route) ? route : 'unknown';
}

function assembled(
  picture: SampledPicture,
  press: Press,
  results: readonly RouteResult[],
  ground: readonly string[],
  black: ReadBlack | null,
): Omit<Forecast, 'notes'> {
  const weigh = (value: (result: RouteResult) => number) =>
    results.reduce((sum, result) => sum + result.option.weight * value(result), 0);
  const weighAB = (value: (result: RouteResult) => AB): AB => ({
    a: weigh(result => value(result).a),
    b: weigh(result => value(result).b),
  });
  const within = (scatter: (result: RouteResult) => Scatter): Scatter =>
    meanScatter(results.map(result => ({ weight: result.option.weight, scatter: scatter(result) })));
  const tint = tintOf(results);
  const blacks = results.map(result => result.range.black);
  const paper = weighAB(result => result.parts.paper);
  const aimShare =
    Math.hypot(paper.a, paper.b) / (Math.hypot(press.paper.white[1], press.paper.white[2]) || 1);
  return {
    condition: {
      process: press.process.id,
      paper: press.paper.id,
      light: press.light,
      route: routeTaken(results),
      basis: press.basis,
      reading: null,
    },
    zones: picture.zones.map((zone, i): ForecastZone => {
      const scatter = within(result => result.zones[i].scatter);
      const sd = deviations(whole(scatter));
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
        corr: spreadOf(scatter).corr,
      };
    }),
    tint,
    absolute: { a: tint.a + paper.a, b: tint.b + paper.b },
    spread: {
      ...spreadOf(within(result => result.scatter)),
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
      black: likeliest(results).range.black,
      blackDeepest: Math.min(...blacks),
      blackWeakest: Math.max(...blacks),
      blackRead: black !== null,
      white: press.model.white[0],
      blockedShare: weigh(result => result.range.blockedShare),
      closedShare: weigh(result => result.range.closedShare),
      lostSteps: weigh(result => result.range.lostSteps),
    },
    ...(results.length > 1 ? { routes: results.map(result => routeForecast(result, picture)) } : {}),
    ground: [
      ...ground,
      ...(black ? [black.ground, ...withBlackRead(press.model.ground, press.process)] : press.model.ground),
      ...(results.length > 1 ? [WEIGHTS] : []),
    ],
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
    seen: mean(result => result.seen),
    seenObvious: mean(result => result.seenObvious),
  };
}

const routeForecast = (result: RouteResult, { zones }: SampledPicture): RouteForecast => ({
  route: result.option.route,
  label: result.option.label,
  weight: result.option.weight,
  Lprint: zones.reduce((sum, { weight }, i) => sum + weight * result.zones[i].response.Lprint, 0),
  black: result.range.black,
  tint: tintOf([result]),
  spread: spreadOf(result.scatter),
});

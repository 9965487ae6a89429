// no-unit-test: its names and its order are what test/report/json/index.test.ts reads
import type { AB, Bands, Forecast, ForecastZone, RouteForecast, Spread, Tint } from '../../shared/forecast';
import { round, roundAB, sum } from './number';

/** A forecast as reports give it: rounded, tint and absolute the exact sums of the rounded parts. */
export function forecastJson(forecast: Forecast) {
  const parts = {
    paper: roundAB(forecast.parts.paper),
    process: roundAB(forecast.parts.process),
    encoding: roundAB(forecast.parts.encoding),
    light: roundAB(forecast.parts.light),
  };
  const brightener = roundAB(forecast.lightParts.brightener);
  const lightParts = {
    colourants: roundAB({ a: parts.light.a - brightener.a, b: parts.light.b - brightener.b }),
    brightener,
  };
  const centre = sum(parts.process, parts.encoding, parts.light);
  const { spread, range, condition, routes } = forecast;
  return {
    condition: {
      process: condition.process,
      paper: condition.paper,
      light: condition.light,
      route: condition.route,
      basis: condition.basis,
    },
    zones: forecast.zones.map(zoneJson),
    tint: tintJson(forecast.tint, centre),
    absolute: sum(centre, parts.paper),
    spread: {
      ...spreadJson(spread),
      paper: roundAB(spread.paper),
    },
    parts,
    lightParts,
    range: {
      black: round(range.black),
      blackDeepest: round(range.blackDeepest),
      blackWeakest: round(range.blackWeakest),
      white: round(range.white),
      blockedShare: round(range.blockedShare),
      closedShare: round(range.closedShare),
      lostSteps: round(range.lostSteps),
    },
    ...(routes && { routes: routes.map(routeJson) }),
    notes: forecast.notes,
    ground: forecast.ground,
  };
}

const zoneJson = (zone: ForecastZone) => ({
  L: round(zone.L),
  weight: round(zone.weight),
  Lprint: round(zone.Lprint),
  a: round(zone.a),
  b: round(zone.b),
  aimA: round(zone.aimA),
  aimB: round(zone.aimB),
  sdA: round(zone.sdA),
  sdB: round(zone.sdB),
  corr: round(zone.corr),
});

function tintJson(tint: Tint, { a, b }: AB) {
  return {
    a,
    b,
    chroma: round(tint.chroma),
    hue: round(tint.hue),
    direction: tint.direction,
    directionProbability: round(tint.directionProbability),
    bands: bandsJson(tint.bands),
    seen: round(tint.seen),
    seenObvious: round(tint.seenObvious),
  };
}

const spreadJson = ({ house, order, page, corr }: Spread) => ({
  house: roundAB(house),
  order: roundAB(order),
  page: roundAB(page),
  corr: round(corr),
});

const bandsJson = (bands: Bands): Bands => ({
  neutral: round(bands.neutral),
  faint: round(bands.faint),
  visible: round(bands.visible),
  obvious: round(bands.obvious),
  heavy: round(bands.heavy),
});

const routeJson = ({ route, label, weight, Lprint, black, tint, spread }: RouteForecast) => ({
  route,
  label,
  weight: round(weight),
  Lprint: round(Lprint),
  black: round(black),
  tint: tintJson(tint, roundAB(tint)),
  spread: spreadJson(spread),
});

import type { AB, Bands } from '../shared/forecast';
import { bandsOf, meanBands } from './bands';
import { handled } from './handling';
import type { Press } from './press';
import { type TonalRange, tonalRange } from './range';
import { asReference } from './reference';
import { colourOf, respond, type ZoneResponse } from './response';
import type { RouteOption } from './routes';
import type { SampledPicture } from './samples';
import { type Covariance, covariances, distribution, meanMoves } from './scatter';
import type { TintDistribution } from './tint';
import { visibility } from './visibility';

/** A picture on a press by one route, worked out. */
export interface RouteResult {
  option: RouteOption;
  zones: { response: ZoneResponse; scatter: { order: Covariance; page: Covariance } }[];
  /** Of the picture: the weighted mean of its zones; one draw of drift is shared by all of them. */
  tint: TintDistribution;
  scatter: { order: Covariance; page: Covariance };
  /** Weighted mean of the zones' own bands, so that a crossover does not cancel. */
  bands: Bands;
  parts: { paper: AB; process: AB; encoding: AB; light: AB };
  range: TonalRange;
}

const minus = (x: AB, y: AB): AB => ({ a: x.a - y.a, b: x.b - y.b });

export function routeResult(option: RouteOption, picture: SampledPicture, press: Press): RouteResult {
  const { model, daylight, aim, daylightAim, reference } = press;
  const destination = { white: press.paper.white[0], reference, axis: press.axis };
  const zones = picture.zones.map(zone => {
    const clusters = handled(option.handling, picture, zone, destination);
    const response = respond(model, aim, clusters);
    const inDaylight = model === daylight ? response : colourAsZone(colourOf(daylight, clusters));
    const plain = colourOf(
      daylight,
      asReference(reference, daylight.dimensions, clusters, inDaylight.Lprint),
    );
    const tint = { a: response.a - response.aimA, b: response.b - response.aimB };
    const daylightTint = {
      a: inDaylight.a - daylightAim.a(inDaylight.Lprint),
      b: inDaylight.b - daylightAim.b(inDaylight.Lprint),
    };
    const process = { a: plain.a - daylightAim.a(plain.L), b: plain.b - daylightAim.b(plain.L) };
    return {
      response,
      scatter: covariances(response.moves, model.drifts),
      weight: zone.weight * visibility(response.Lprint),
      tint,
      paper: { a: response.aimA, b: response.aimB },
      process,
      encoding: minus(daylightTint, process),
      light: minus(tint, daylightTint),
    };
  });
  const total = zones.reduce((sum, zone) => sum + zone.weight, 0);
  for (const zone of zones) zone.weight /= total;
  const mean = (part: 'tint' | 'paper' | 'process' | 'encoding' | 'light'): AB => ({
    a: zones.reduce((sum, zone) => sum + zone.weight * zone[part].a, 0),
    b: zones.reduce((sum, zone) => sum + zone.weight * zone[part].b, 0),
  });
  const scatter = covariances(
    meanMoves(zones.map(zone => ({ weight: zone.weight, moves: zone.response.moves }))),
    model.drifts,
  );
  return {
    option,
    zones,
    tint: distribution(mean('tint'), scatter),
    scatter,
    bands: meanBands(
      zones.map(zone => ({ weight: zone.weight, bands: bandsOf(distribution(zone.tint, zone.scatter)) })),
    ),
    parts: {
      paper: mean('paper'),
      process: mean('process'),
      encoding: mean('encoding'),
      light: mean('light'),
    },
    range: tonalRange(
      option.handling,
      picture,
      press,
      zones.map(zone => zone.response.Lprint),
    ),
  };
}

const colourAsZone = ({ L, a, b }: { L: number; a: number; b: number }) => ({ Lprint: L, a, b });

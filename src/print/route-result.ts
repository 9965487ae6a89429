import type { AB, Bands, Forecast } from '../shared/forecast';
import type { RouteId } from '../shared/target';
import { bandsOf, meanBands, obviousShare, visibleShare } from './bands';
import { type DaylightZone, daylightZones } from './daylight';
import { colouredShare } from './inks/model';
import type { Press, View } from './press';
import { type TonalRange, tonalRange } from './range';
import { colourOf, type DeviceCluster, oneOf, respond, type ZoneResponse } from './response';
import { type RouteOption, routeOptions } from './routes';
import type { SampledPicture } from './samples';
import { covariances, distribution, meanMoves, type Scatter } from './scatter';
import { type Seen, seenIn, type TintedZone } from './seen';
import type { TintDistribution } from './tint';
import { visibility } from './visibility';

/** A picture on a press by one route, worked out. */
export interface RouteResult extends Seen {
  option: RouteOption;
  zones: { response: ZoneResponse; scatter: Scatter }[];
  /** Of the picture: the weighted mean of its zones; one draw of drift is shared by all of them. */
  tint: TintDistribution;
  scatter: Scatter;
  /** Weighted mean of the zones' own bands, so that a crossover does not cancel. */
  bands: Bands;
  parts: Forecast['parts'];
  lightParts: Forecast['lightParts'];
  range: TonalRange;
}

/** Every way that a route may take, worked out; one of the known ones is a single way, or several separations. */
export function routeResults(picture: SampledPicture, press: Press, route: RouteId): RouteResult[] {
  const { signal } = press.process;
  return routeOptions(signal, route, picture.space, picture.neutral, press.generations).map(option =>
    routeResult(option, picture, press),
  );
}

const NONE: AB = { a: 0, b: 0 };
const minus = (x: AB, y: AB): AB => ({ a: x.a - y.a, b: x.b - y.b });
const tintOf = ({ a, b, aimA, aimB }: ZoneResponse): AB => ({ a: a - aimA, b: b - aimB });

export function routeResult(option: RouteOption, picture: SampledPicture, press: Press): RouteResult {
  const { drifts } = press.model;
  const zones = daylightZones(option, picture, press).map((daylight, i) => {
    const response = inLight(daylight, press);
    const tint = tintOf(response);
    const daylightTint = tintOf(daylight.response);
    return {
      response,
      scatter: covariances(response.moves, drifts),
      weight: picture.zones[i].weight * visibility(response.Lprint),
      tint,
      paper: { a: response.aimA, b: response.aimB },
      process: daylight.process,
      encoding: minus(daylightTint, daylight.process),
      light: minus(tint, daylightTint),
      brightener: press.withoutBrightener ? brightenerPart(daylight, press, press.withoutBrightener) : NONE,
    };
  });
  const total = zones.reduce((sum, zone) => sum + zone.weight, 0);
  for (const zone of zones) zone.weight /= total;
  const mean = (part: 'tint' | 'paper' | 'process' | 'encoding' | 'light' | 'brightener'): AB => ({
    a: zones.reduce((sum, zone) => sum + zone.weight * zone[part].a, 0),
    b: zones.reduce((sum, zone) => sum + zone.weight * zone[part].b, 0),
  });
  const scatter = covariances(
    meanMoves(zones.map(zone => ({ weight: zone.weight, moves: zone.response.moves }))),
    drifts,
  );
  return {
    option,
    zones,
    tint: distribution(mean('tint'), scatter),
    scatter,
    ...probabilities(zones.map(zone => ({ ...zone, moves: zone.response.moves }))),
    parts: {
      paper: mean('paper'),
      process: mean('process'),
      encoding: mean('encoding'),
      light: mean('light'),
    },
    lightParts: { colourants: minus(mean('light'), mean('brightener')), brightener: mean('brightener') },
    range: tonalRange(
      option.handling,
      picture,
      press,
      zones.map(zone => zone.response.Lprint),
    ),
  };
}

/** The likeliest of several ways: the one that keeps the file's encoding where there is one. */
export const likeliest = (results: readonly RouteResult[]): RouteResult =>
  results.reduce((best, result) => (result.option.weight > best.option.weight ? result : best));

/** Of a picture, by its zones: how much of it is tinted on the mean, and in how many orders that is seen. */
export function probabilities(
  zones: readonly (TintedZone & { scatter: Scatter })[],
): Seen & { bands: Bands } {
  const bands = meanBands(
    zones.map(({ weight, tint, scatter }) => ({ weight, bands: bandsOf(distribution(tint, scatter)) })),
  );
  return { bands, ...seenIn(zones, { seen: visibleShare(bands), seenObvious: obviousShare(bands) }) };
}

/** The zone under the press's light: by the light's change of its mean colour, or by the light's own model. Drift moves it as under D50. */
function inLight({ response, clusters }: DaylightZone, { model, daylight, aim, shift }: Press): ZoneResponse {
  if (model === daylight) return response;
  if (!shift) return respond(model, aim, clusters, response.moves.drift);
  const coloured = colouredIn(clusters);
  const change = new Float64Array(3);
  shift.shift(response.Lprint, coloured, change);
  const spread = shift.spread(response.Lprint, coloured);
  const Lprint = response.Lprint + change[0];
  const { drift, shared } = response.moves;
  return {
    Lprint,
    a: response.a + change[1],
    b: response.b + change[2],
    aimA: aim.a(Lprint),
    aimB: aim.b(Lprint),
    moves: { drift, shared: { a: Math.hypot(shared.a, spread.a), b: Math.hypot(shared.b, spread.b) } },
  };
}

/** What the light's own share of ultraviolet does to the zone's tint, at its mean colour. */
function brightenerPart({ response, clusters }: DaylightZone, press: Press, without: View): AB {
  const at = (view: View) => {
    const { model, aim, shift } = view;
    if (model === press.daylight) return tintOf(response);
    if (!shift) {
      const { L, a, b } = colourOf(model, [oneOf(clusters)]);
      return { a: a - aim.a(L), b: b - aim.b(L) };
    }
    const change = new Float64Array(3);
    shift.shift(response.Lprint, colouredIn(clusters), change);
    const L = response.Lprint + change[0];
    return { a: response.a + change[1] - aim.a(L), b: response.b + change[2] - aim.b(L) };
  };
  return minus(at(press), at(without));
}

/** How much of a zone coloured inks make, 0-1. */
const colouredIn = (clusters: readonly DeviceCluster[]) =>
  clusters.reduce((sum, { weight, mean }) => sum + weight * colouredShare(mean), 0);

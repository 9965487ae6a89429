import type { AB } from '../shared/forecast';
import { handled } from './handling';
import type { Press } from './press';
import { asReference } from './reference';
import { colourOf, type DeviceCluster, respond, type ZoneResponse } from './response';
import type { RouteOption } from './routes';
import type { SampledPicture } from './samples';

/** What no viewing light changes of a zone by one route. */
export interface DaylightZone {
  clusters: DeviceCluster[];
  /** Under D50. */
  response: ZoneResponse;
  /** Tint (a*, b* from the aim) of the process's reference encoding at the same lightness, under D50. */
  process: AB;
}

/**
 * The picture last asked for, with its zones by press and route: the same picture is usually forecast for one
 * condition after another, of which many differ in the light alone.
 */
let latest: { picture: SampledPicture; zones: Map<unknown, Map<string, DaylightZone[]>> } | null = null;

export function daylightZones(option: RouteOption, picture: SampledPicture, press: Press): DaylightZone[] {
  if (latest?.picture !== picture) latest = { picture, zones: new Map() };
  let byRoute = latest.zones.get(press.daylight);
  if (!byRoute) latest.zones.set(press.daylight, (byRoute = new Map()));
  let zones = byRoute.get(option.label);
  if (!zones) byRoute.set(option.label, (zones = makeZones(option, picture, press)));
  return zones;
}

function makeZones(option: RouteOption, picture: SampledPicture, press: Press): DaylightZone[] {
  const { daylight, daylightAim: aim, reference } = press;
  const destination = { white: press.paper.white[0], reference, separation: press.separation };
  return picture.zones.map(zone => {
    const clusters = handled(option.handling, picture, zone, destination);
    const response = respond(daylight, aim, clusters);
    const plain = colourOf(daylight, asReference(reference, daylight.dimensions, clusters, response.Lprint));
    return {
      clusters,
      response,
      process: { a: plain.a - aim.a(plain.L), b: plain.b - aim.b(plain.L) },
    };
  });
}

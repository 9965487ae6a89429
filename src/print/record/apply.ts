import type { AB } from '../../shared/forecast';
import type { PrintRecord, RecordReading, Target } from '../../shared/target';
import { bandsOf, meanBands } from '../bands';
import { pressOf } from '../press';
import { lostBelow } from '../range';
import { restated } from '../restated';
import { type RouteResult, routeResults } from '../route-result';
import type { SampledPicture } from '../samples';
import { type Covariance, distribution } from '../scatter';
import { visibility } from '../visibility';
import { shrink, tintAt } from './shrink';

/** Above this an ink is in use (the limit of `black-only`). */
const IN_USE = 0.01;

/** The reading of patches that were stored as the picture is; null where the record holds none. */
export function readingFor(picture: SampledPicture, record: PrintRecord): RecordReading | null {
  const encoding = kindOf(picture);
  return record.readings.find(reading => reading.encoding === encoding) ?? null;
}

function kindOf({ space, zones }: SampledPicture): RecordReading['encoding'] {
  if (space === 'grey') return 'single-channel';
  if (space !== 'cmyk') return 'rgb-neutral';
  const coloured = zones.some(zone =>
    zone.clusters.some(({ mean }) => mean.slice(0, 3).some(ink => ink > IN_USE)),
  );
  return coloured ? 'four-channel' : 'black-only';
}

/**
 * The generic forecast of a picture narrowed by what was read of the print house. What a sound grey of the same kind
 * is expected to print is moved towards the reading (shrinkage, axis by axis); the picture moves with it, and keeps
 * what is its own. The route is in the reading, so that one way is left. `results` are the generic ones.
 */
export function narrowed(
  reading: RecordReading,
  results: readonly RouteResult[],
  picture: SampledPicture,
  target: Target,
): { result: RouteResult; ground: string[] } {
  const plain = { ...target, light: 'D50' as const };
  const daylight = pressOf(plain);
  const sound = routeResults(restated(reading.encoding, picture, daylight), daylight, plain.route);
  const zones = picture.zones.map((zone, i) => {
    const L = mean(sound, result => result.zones[i].response.Lprint);
    const read = tintAt(reading.greys, L);
    const [a, b] = (['a', 'b'] as const).map(axis => {
      const prior = priorOf(sound, i, axis);
      const variance = reading.order ? reading.order[axis] ** 2 : prior.variance / 2;
      const next = shrink(prior, { mean: read[axis], n: reading.orders, variance });
      return { move: next.mean - prior.mean, variance: next.variance };
    });
    const { aimA, aimB } = meanOf(results, i);
    const response = { ...meanOf(results, i), moves: { drift: new Float64Array(0), shared: { a: 0, b: 0 } } };
    response.a += a.move;
    response.b += b.move;
    const page = pageOf(reading, results, i);
    return {
      response,
      scatter: { order: { aa: a.variance, ab: 0, bb: b.variance }, page },
      weight: zone.weight * visibility(response.Lprint),
      tint: { a: response.a - aimA, b: response.b - aimB },
      move: { a: a.move, b: b.move },
    };
  });
  const total = zones.reduce((sum, zone) => sum + zone.weight, 0);
  const weigh = (value: (zone: (typeof zones)[number]) => number) =>
    zones.reduce((sum, zone) => sum + (zone.weight / total) * value(zone), 0);
  // one order moves all zones together: deviations add up, variances would not
  const together = (which: 'order' | 'page'): Covariance => ({
    aa: weigh(zone => Math.sqrt(zone.scatter[which].aa)) ** 2,
    ab: 0,
    bb: weigh(zone => Math.sqrt(zone.scatter[which].bb)) ** 2,
  });
  const scatter = { order: together('order'), page: together('page') };
  const weighed = (part: (result: RouteResult) => AB): AB => ({
    a: mean(results, result => part(result).a),
    b: mean(results, result => part(result).b),
  });
  const process = weighed(result => result.parts.process);
  const parts = {
    paper: weighed(result => result.parts.paper),
    process: { a: process.a + weigh(zone => zone.move.a), b: process.b + weigh(zone => zone.move.b) },
    encoding: weighed(result => result.parts.encoding),
    light: weighed(result => result.parts.light),
  };
  const tint = {
    a: parts.process.a + parts.encoding.a + parts.light.a,
    b: parts.process.b + parts.encoding.b + parts.light.b,
  };
  const black = reading.black ?? mean(results, result => result.range.black);
  return {
    result: {
      option: { ...results[0].option, label: 'as this print house delivered it', weight: 1 },
      zones,
      tint: distribution(tint, scatter),
      scatter,
      bands: meanBands(
        zones.map(zone => ({ weight: zone.weight, bands: bandsOf(distribution(zone.tint, zone.scatter)) })),
      ),
      parts,
      lightParts: {
        colourants: weighed(result => result.lightParts.colourants),
        brightener: weighed(result => result.lightParts.brightener),
      },
      range: {
        black,
        white: results[0].range.white,
        ...lostBelow(
          picture,
          zones.map(zone => zone.response.Lprint),
          black,
        ),
      },
    },
    ground: [groundOf(reading, target.printRecord!)],
  };
}

const mean = (results: readonly RouteResult[], value: (result: RouteResult) => number) =>
  results.reduce((sum, result) => sum + result.option.weight * value(result), 0);

const meanOf = (results: readonly RouteResult[], zone: number) => {
  const of = (key: 'Lprint' | 'a' | 'b' | 'aimA' | 'aimB') =>
    mean(results, result => result.zones[zone].response[key]);
  return { Lprint: of('Lprint'), a: of('a'), b: of('b'), aimA: of('aimA'), aimB: of('aimB') };
};

/** Of one zone and axis: the mean tint, and its variance over orders and over the ways that the house may take. */
function priorOf(results: readonly RouteResult[], zone: number, axis: 'a' | 'b') {
  const tint = ({ zones }: RouteResult) => {
    const { response } = zones[zone];
    return axis === 'a' ? response.a - response.aimA : response.b - response.aimB;
  };
  const centre = mean(results, tint);
  const variance = mean(results, result => {
    const { order } = result.zones[zone].scatter;
    return (axis === 'a' ? order.aa : order.bb) + (tint(result) - centre) ** 2;
  });
  return { mean: centre, variance };
}

function pageOf({ page }: RecordReading, results: readonly RouteResult[], zone: number): Covariance {
  if (page) return { aa: page.a ** 2, ab: 0, bb: page.b ** 2 };
  const of = (key: keyof Covariance) => mean(results, result => result.zones[zone].scatter.page[key]);
  return { aa: of('aa'), ab: of('ab'), bb: of('bb') };
}

function groundOf({ orders, order }: RecordReading, { date }: PrintRecord): string {
  const read = `${orders} ${orders === 1 ? 'order' : 'orders'} of this print house read, the last on ${date}`;
  return order
    ? `${read}; from one order to the next it scatters by ${order.a.toFixed(1)} in a* and ${order.b.toFixed(1)} in b*`
    : `${read}; how far the next one will differ is a guess from the process in general`;
}

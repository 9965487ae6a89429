import type { AB } from '../../shared/forecast';
import type { PrintRecord, RecordReading, Target } from '../../shared/target';
import { pressOf } from '../press';
import { lostBelow } from '../range';
import { restated } from '../restated';
import { likeliest, probabilities, type RouteResult, routeResults } from '../route-result';
import type { SampledPicture } from '../samples';
import { type Covariance, distribution, type Level, type Moves, type Scatter, whole } from '../scatter';
import { visibility } from '../visibility';
import { type Held, kindOf, storedAs } from './reading';
import { shrink, tintAt } from './shrink';

/**
 * What is not known of an encoding that was not read but goes the same way as one that was, one SD of a* and b*: whether
 * this house really treats both alike. Own choice: half of what is seen beside a neutral.
 */
const ALIKE = 0.5;

/**
 * The generic forecast of a picture narrowed by what was read of the print house. What a sound grey of the same kind
 * is expected to print is moved towards the reading (shrinkage, axis by axis); the picture moves with it, and keeps
 * what is its own. The route is in the reading, so that one way is left. `results` are the generic ones, their black as
 * it was read where it was.
 */
export function narrowed(
  { reading, how }: Held,
  results: readonly RouteResult[],
  picture: SampledPicture,
  target: Target,
): { result: RouteResult; ground: string[] } {
  const plain = { ...target, light: 'D50' as const };
  const daylight = pressOf(plain);
  const sound = routeResults(restated(reading.encoding, picture, daylight), daylight, plain.route);
  const doubt = how === 'alike' ? ALIKE ** 2 : 0;
  const zones = picture.zones.map((zone, i) => {
    const L = mean(sound, result => result.zones[i].response.Lprint);
    const read = tintAt(reading.greys, L);
    const [a, b] = (['a', 'b'] as const).map(axis => {
      const prior = priorOf(sound, i, axis);
      const variance = reading.order ? reading.order[axis] ** 2 : Math.min(prior.order, prior.variance / 2);
      const {
        mean,
        variance: house,
        order,
      } = shrink(prior, { mean: read[axis], n: reading.orders, variance });
      return { move: mean - prior.mean, house: house + doubt, order };
    });
    const was = meanOf(results, i);
    const scatter: Scatter = {
      house: { aa: a.house, ab: 0, bb: b.house },
      order: { aa: a.order, ab: 0, bb: b.order },
      page: pageOf(reading, results, i),
    };
    const response = { ...was, a: was.a + a.move, b: was.b + b.move, moves: movesOf(scatter) };
    return {
      response,
      moves: response.moves,
      scatter,
      weight: zone.weight * visibility(response.Lprint),
      tint: { a: response.a - was.aimA, b: response.b - was.aimB },
      move: { a: a.move, b: b.move },
    };
  });
  const total = zones.reduce((sum, zone) => sum + zone.weight, 0);
  for (const zone of zones) zone.weight /= total;
  const weigh = (value: (zone: (typeof zones)[number]) => number) =>
    zones.reduce((sum, zone) => sum + zone.weight * value(zone), 0);
  // one order moves all zones together: deviations add up, variances would not
  const together = (which: Level): Covariance => ({
    aa: weigh(zone => Math.sqrt(zone.scatter[which].aa)) ** 2,
    ab: 0,
    bb: weigh(zone => Math.sqrt(zone.scatter[which].bb)) ** 2,
  });
  const scatter = { house: together('house'), order: together('order'), page: together('page') };
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
  const { black } = likeliest(results).range;
  return {
    result: {
      option: { ...results[0].option, label: 'as this print house delivered it', weight: 1 },
      zones,
      tint: distribution(tint, scatter),
      scatter,
      ...probabilities(zones),
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
    ground: [
      how === 'own'
        ? groundOf(reading, target.printRecord!)
        : groundOfAlike(reading, target.printRecord!, picture),
    ],
  };
}

const mean = (results: readonly RouteResult[], value: (result: RouteResult) => number) =>
  results.reduce((sum, result) => sum + result.option.weight * value(result), 0);

const meanOf = (results: readonly RouteResult[], zone: number) => {
  const of = (key: 'Lprint' | 'a' | 'b' | 'aimA' | 'aimB') =>
    mean(results, result => result.zones[zone].response[key]);
  return { Lprint: of('Lprint'), a: of('a'), b: of('b'), aimA: of('aimA'), aimB: of('aimB') };
};

/** What moves a zone of this scatter: one cause that moves a* and b* together, and one that moves b* alone. */
function movesOf(scatter: Scatter): Moves {
  const { aa, ab, bb } = whole(scatter);
  const a = Math.sqrt(aa);
  const along = a > 0 ? ab / a : 0;
  const drift = Float64Array.of(a, along, 0, Math.sqrt(Math.max(0, bb - along ** 2)));
  return { drift, shared: { a: 0, b: 0 } };
}

/**
 * Of one zone and axis: the mean tint; its variance over houses, over the ways that one may take and, for want of a
 * division of a process's drift, over orders; that over orders by itself.
 */
function priorOf(results: readonly RouteResult[], zone: number, axis: 'a' | 'b') {
  const tint = ({ zones }: RouteResult) => {
    const { response } = zones[zone];
    return axis === 'a' ? response.a - response.aimA : response.b - response.aimB;
  };
  const centre = mean(results, tint);
  const key = axis === 'a' ? 'aa' : 'bb';
  const order = mean(results, result => result.zones[zone].scatter.order[key]);
  const others = mean(
    results,
    result => result.zones[zone].scatter.house[key] + (tint(result) - centre) ** 2,
  );
  return { mean: centre, variance: others + order, order };
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

/** The same of another encoding than the picture's. */
function groundOfAlike({ encoding, orders }: RecordReading, { date }: PrintRecord, picture: SampledPicture) {
  const read = `${orders} ${orders === 1 ? 'order' : 'orders'} of greys sent as ${storedAs[encoding]} read, the last on ${date}`;
  return `${read}, and taken to hold for ${storedAs[kindOf(picture)]}, which should go the same way through the machine: less sure for that`;
}

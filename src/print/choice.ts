import type { Forecast } from '../shared/forecast';
import type { Encoding } from '../shared/picture';
import type { Target } from '../shared/target';
import { processOf } from './processes';
import { type GreyEncoding, greyEncodings } from './restated';

/** L* of a black by the likeliest way of the print house, by the one with the deepest, and by that with the weakest. */
export type Black = Pick<Forecast['range'], 'black' | 'blackDeepest' | 'blackWeakest'>;

/** An encoding, and how greys would print in it on a target. */
export interface Way {
  encoding: GreyEncoding;
  /** Chance (0-1) of a visible tint; of several pictures the mean. */
  probability: number;
  /** L* of the darkest black. */
  black: Black;
  /** What of the house's prints it rests on. */
  reading: Forecast['condition']['reading'];
  /** So many pictures are stored so. */
  stored: number;
}

/** One of several encodings, and why. */
export interface Choice extends Way {
  /**
   * - `even`: nothing prints clearly less often with a visible tint, and something does more often
   * - `range`: nothing prints clearly less often with a visible tint, and others have a weaker black
   * - `read`: prints of the house were read that were sent so, and of the others none
   * - `frequent`: nothing does, nor with a deeper black; nothing leaves less to convert
   */
  why: 'even' | 'range' | 'read' | 'frequent';
}

/** Chances of a visible tint nearer than this are a tie: no forecast is that exact. Own choice. */
export const TIE = 0.1;
/** So are blacks nearer than this, L*. Own choice. */
export const SAME_BLACK = 1;

const inks: ReadonlySet<Encoding> = new Set(['black-only', 'four-channel', 'three-ink']);

/**
 * Whether a file says how much ink, of a process that prints from R, G, B: that means nothing there, and what becomes of
 * it is the guess of whoever turns it, unless prints of such files were read (common practice, no source).
 */
export const isForeign = (
  encoding: Encoding,
  { process }: Pick<Target, 'process'>,
  reading: Forecast['condition']['reading'],
): boolean => inks.has(encoding) && reading === null && processOf(process).signal === 'rgb';

/**
 * What greys can be sent as: what the target takes. Where nobody said: R = G = B and one grey channel go everywhere, ink
 * values where the route keeps them or offset plates are made (common practice, no source).
 */
export function sendable({ process, route, encodings }: Target): GreyEncoding[] {
  if (encodings?.length) return greyEncodings.filter(encoding => encodings.includes(encoding));
  const offset = process.startsWith('offset-') && route === 'unknown';
  const inks = processOf(process).signal !== 'rgb' && (offset || route === 'inks' || route === 'black-plate');
  return inks ? ['rgb-neutral', 'single-channel', 'black-only'] : ['rgb-neutral', 'single-channel'];
}

/** Evenness first, as far as chances of a visible tint are not nearer than `tie`; of those that tie the one with the deeper black, then the more frequent. Null for none. */
export function evenest(all: readonly Way[], tie: number): Choice | null {
  if (all.length === 0) return null;
  const ways = bestKnown(all);
  const lowest = Math.min(...ways.map(({ probability }) => probability));
  const even = ways.filter(({ probability }) => probability - lowest < tie);
  const deep = even.filter(way => !even.some(other => isFlatter(way.black, other.black)));
  const [best] = deep.toSorted((x, y) => y.stored - x.stored);
  const told = even.length < ways.length ? 'even' : ways.length < all.length ? 'read' : 'frequent';
  return { ...best, why: deep.length < even.length ? 'range' : told };
}

/** By the likeliest way, and not only there: of the same span of blacks nothing is lost that is known. */
export const isFlatter = (one: Black, other: Black): boolean =>
  one.black - other.black >= SAME_BLACK &&
  (one.blackDeepest - other.blackDeepest >= SAME_BLACK ||
    one.blackWeakest - other.blackWeakest >= SAME_BLACK);

/** How greys print that are stored in some way. */
export interface Stored {
  encoding: Encoding;
  /** Chance (0-1) of a visible tint; of several pictures the mean. */
  probability: number;
  reading: Forecast['condition']['reading'];
}

/**
 * What greys had better be stored as, of `ways`: what lowers the chance of a visible tint by `gain` or more, and instead
 * of foreign inks anything that is not foreign. Null where nothing is clearly better.
 */
export function betterThan(now: Stored, ways: readonly Way[], target: Target, gain: number): Choice | null {
  if (isForeign(now.encoding, target, now.reading))
    return evenest(
      ways.filter(({ encoding, reading }) => !isForeign(encoding, target, reading)),
      TIE,
    );
  const evener = bestKnown(ways).filter(
    way => now.probability - way.probability >= gain && comparable(now.reading, way.reading, now.encoding),
  );
  return evenest(evener, TIE);
}

/**
 * Whether chances of a visible tint can be set against each other: those by a reading of the house's prints and generic
 * ones cannot. Of two encodings that go the same way through the machine one was read and the other is only less sure,
 * which is no difference in print; unless the picture, `stored` as it is, has a tone of its own.
 */
export function comparable(
  reading: Forecast['condition']['reading'],
  other: Forecast['condition']['reading'],
  stored: Encoding,
): boolean {
  return stored === 'rgb-toned' ? (reading === null) === (other === null) : reading === other;
}

/**
 * Those that prints of the house were read of, where there are such: an encoding that was not read is no reason to
 * convert. Else those that go the same way as what was read, else all.
 */
function bestKnown(ways: readonly Way[]): readonly Way[] {
  const known = (['own', 'alike'] as const).map(how => ways.filter(({ reading }) => reading === how));
  return known.find(some => some.length > 0) ?? ways;
}

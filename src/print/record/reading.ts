import type { GreyEncoding, PrintRecord, RecordReading, Target } from '../../shared/target';
import type { Process } from '../process';
import { spaceOf } from '../restated';
import { routeOptions } from '../routes';
import type { SampledPicture } from '../samples';

/** Above this an ink is in use (the limit of `black-only`). */
const IN_USE = 0.01;

/** Encodings as a sentence names them. */
export const storedAs: Record<GreyEncoding, string> = {
  'rgb-neutral': 'R = G = B',
  'single-channel': 'one grey channel',
  'black-only': 'black ink alone',
  'four-channel': 'four inks',
};

/** A reading that holds for a picture. */
export interface Held {
  reading: RecordReading;
  /** `own`: of greys stored like the picture's; `alike`: of an encoding that goes the same way through the machine. */
  how: 'own' | 'alike';
}

/** The encoding of patches that are stored as the picture is. */
export function kindOf({ space, zones }: SampledPicture): GreyEncoding {
  if (space === 'grey') return 'single-channel';
  if (space !== 'cmyk') return 'rgb-neutral';
  const coloured = zones.some(zone =>
    zone.clusters.some(({ mean }) => mean.slice(0, 3).some(ink => ink > IN_USE)),
  );
  return coloured ? 'four-channel' : 'black-only';
}

/** What the record holds of such pictures on the target: the reading of their own encoding goes first; null for nothing. */
export function readingFor(
  picture: SampledPicture,
  record: PrintRecord,
  { signal }: Pick<Process, 'signal'>,
  { route }: Pick<Target, 'route'>,
): Held | null {
  const kind = kindOf(picture);
  const own = record.readings.find(({ encoding }) => encoding === kind);
  if (own) return { reading: own, how: 'own' };
  const alike = record.readings.find(({ encoding }) => goAlike(kind, encoding, signal, route));
  return alike ? { reading: alike, how: 'alike' } : null;
}

/** Of greys without inks of their own; what a house makes of inks is a guess that no reading of another encoding takes away. */
const WITHOUT_INKS: ReadonlySet<GreyEncoding> = new Set(['rgb-neutral', 'single-channel']);

/**
 * Whether greys of two encodings reach the machine as the same values: one grey channel and R = G = B do wherever R, G, B
 * is printed, and on presses where the house does the same with both.
 */
export function goAlike(
  x: GreyEncoding,
  y: GreyEncoding,
  signal: Process['signal'],
  route: Target['route'],
): boolean {
  if (x === y) return true;
  if (!WITHOUT_INKS.has(x) || !WITHOUT_INKS.has(y)) return false;
  if (signal === 'rgb') return true;
  const [ways, others] = [x, y].map(encoding => routeOptions(signal, route, spaceOf[encoding], true));
  return JSON.stringify(ways) === JSON.stringify(others);
}

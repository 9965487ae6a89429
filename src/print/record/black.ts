import { lightness, luminance } from '../../colour/lab';
import type { PrintRecord, RecordReading, Target } from '../../shared/target';
import { type Press, pressOf } from '../press';
import { restated } from '../restated';
import { likeliest, type RouteResult, routeResults } from '../route-result';
import type { SampledPicture } from '../samples';
import { goAlike, kindOf, storedAs } from './reading';

/** A black that was read, as it holds for a picture. */
export interface ReadBlack {
  /** L* of the darkest black that the picture's encoding can print. */
  black: number;
  /** Where it comes from: a plain sentence. */
  ground: string;
}

/** Blacks of a model nearer than this, L*, are one. */
const SAME = 0.5;

/**
 * The darkest black of the print house's machine and paper, from whatever encoding it was read that goes the same way:
 * the picture's own first; on a process that prints R, G, B any, since all end as such. A paler one than the machine's,
 * such as of black ink turned into R, G, B, says nothing of a deeper one. `results`: the generic ones. Null where no
 * black was read that holds.
 */
export function readBlack(
  picture: SampledPicture,
  record: PrintRecord,
  results: readonly RouteResult[],
  target: Target,
): ReadBlack | null {
  const press = pressOf({ ...target, light: 'D50' });
  const kind = kindOf(picture);
  const found = record.readings.find(reading => reading.encoding === kind && reading.black !== null);
  if (found) return { black: found.black!, ground: groundOf(found, found.black!, record) };
  const generic = likeliest(results).range.black;
  for (const reading of record.readings) {
    if (reading.black === null) continue;
    if (press.process.signal !== 'rgb' && !goAlike(kind, reading.encoding, 'inks', target.route)) continue;
    const machine = genericBlack(reading, press, target);
    if (machine > generic + SAME) continue;
    const black =
      generic - machine < SAME
        ? reading.black
        : rescaled(machine, reading.black, press.model.white[0])(generic);
    return { black, ground: groundOf(reading, black, record) };
  }
  return null;
}

const BLACK = { zones: [{ L: 0, weight: 1 }], histogram: null };

const genericBlack = ({ encoding }: RecordReading, press: Press, target: Target) =>
  likeliest(routeResults(restated(encoding, BLACK, press), press, target.route)).range.black;

/** Print lightness with the darkest tone moved, paper kept: luminance is scaled between them. All L*. */
export function rescaled(from: number, to: number, white: number): (L: number) => number {
  const [Yfrom, Yto, Ywhite] = [from, to, white].map(luminance);
  return L => lightness(Yto + ((luminance(L) - Yfrom) * (Ywhite - Yto)) / (Ywhite - Yfrom));
}

function groundOf({ encoding, black }: RecordReading, held: number, { date }: PrintRecord): string {
  const read = `black of L* ${black!.toFixed(0)} read from the house's prints (of ${storedAs[encoding]}; last reading ${date})`;
  return Math.abs(held - black!) < SAME
    ? read
    : `${read}, by which black in this encoding is L* ${held.toFixed(0)}`;
}

import { forecastToned } from '../../print/toned-scale';
import type { AB, Forecast } from '../../shared/forecast';
import type { Tone } from '../../shared/remedy';
import type { Target } from '../../shared/target';
import { RemedyError } from '../remedy-error';

/** What a counter-tint answers. */
export interface CounterWish {
  /** How much of it, 0-1. */
  strength: number;
  /** The print's tint against the grey that suits its paper, or that and the paper's own colour. */
  against: 'print' | 'print and paper';
}

/** A tone for `rgb-toned`, and what is to be known of it. */
export interface CounterTint {
  tone: Tone & { kind: 'stated' };
  told: string[];
}

/** Step by which the print's answer to a tint in the file is tried out. */
const TRIED = 2;
/** Below this a tint is not seen (dCh). */
const SEEN = 1;
/** A file's tint beyond this is no correction any more (own choice). */
const MOST = 12;

/**
 * A tint for the file that answers the one that this print house's prints had: the other way, as strong as is asked.
 * How a tint of the file comes out in print is taken from the forecast.
 * @throws RemedyError without a record of that house that was read of such files, and where there is nothing to answer
 */
export function counterTint(target: Target, { strength, against }: CounterWish): CounterTint {
  const record = target.printRecord;
  const reading = record?.readings.find(({ encoding }) => encoding === 'rgb-neutral');
  if (!record || !reading)
    throw new RemedyError(
      record
        ? 'A counter-tint answers what was read from prints, and the record holds no greys that were sent as R = G = B. Read such a print first.'
        : 'A counter-tint answers what was read from prints of this house, and there is no record of it. Order a test print and read it first: a guess would tint the book one way or the other.',
    );
  if (against === 'print and paper' && !record.paper && typeof target.paper === 'string')
    throw new RemedyError(
      "The paper of this house was not read: its colour is a guess, which a tint of the file should not answer. Measure it, or answer the print's tint alone.",
    );
  const seen = (forecast: Forecast): AB => (against === 'print' ? forecast.tint : forecast.absolute);
  const plain = forecastToned(0, 0, target);
  const tint = seen(plain);
  const chroma = Math.hypot(tint.a, tint.b);
  if (chroma < SEEN)
    throw new RemedyError(
      `By what was read this house prints with a tint of ${chroma.toFixed(1)} in a*, b*, which is not seen: there is nothing to answer.`,
    );
  const a = answerOf(seen(forecastToned(TRIED, 0, target)), tint);
  const b = answerOf(seen(forecastToned(0, TRIED, target)), tint);
  const tone = solved(a, b, { a: -strength * tint.a, b: -strength * tint.b });
  if (!(Math.hypot(tone.a, tone.b) <= MOST))
    throw new RemedyError(
      `A tint of ${words(tone)} would be needed: that is no correction any more. Ask the print house what is wrong, or choose less strength.`,
    );
  const { orders } = reading;
  const toned = seen(forecastToned(tone.a, tone.b, target));
  const moved = { a: toned.a - tint.a, b: toned.b - tint.b };
  return {
    tone: { kind: 'stated', ...tone, counter: true },
    told: [
      `By what was read of this house (${orders} ${orders === 1 ? 'order' : 'orders'}, the last on ${record.date}) its prints are ${words(tint)} off; to answer ${(strength * 100).toFixed(0)} % of it the file gets ${words(tone)}, which by the forecast moves the prints by ${words(moved)}: they do not take on a tint of the file one to one.`,
      `The next order will differ by about ${Math.hypot(plain.spread.order.a, plain.spread.order.b).toFixed(1)} in a*, b* again, and no counter-tint can know which way. Order a test print before the run.`,
    ],
  };
}

/** `a* 0.3, b* -1.9`; never a zero below zero. */
const words = ({ a, b }: AB): string => `a* ${tenth(a).toFixed(1)}, b* ${tenth(b).toFixed(1)}`;
const tenth = (value: number): number => Math.round(value * 10) / 10 + 0;

/** Change of the print's tint for one unit of the file's. */
const answerOf = (moved: AB, still: AB): AB => ({
  a: (moved.a - still.a) / TRIED,
  b: (moved.b - still.b) / TRIED,
});

/** The a*, b* of the file whose answers (`a`, `b`: for one unit of each) add up to `wanted`, to a tenth. */
function solved(a: AB, b: AB, wanted: AB): AB {
  const determinant = a.a * b.b - b.a * a.b;
  return {
    a: tenth((wanted.a * b.b - b.a * wanted.b) / determinant),
    b: tenth((a.a * wanted.b - wanted.a * a.b) / determinant),
  };
}

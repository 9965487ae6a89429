// no-unit-test: test/rules/likely-tint/index.test.ts judges pictures by it
import { comparable, isForeign } from '../../print/choice';
import { type Lean, leanOf } from '../../print/lean';
import type { BookPicture } from '../../shared/finding';
import type { Forecast } from '../../shared/forecast';
import type { Encoding } from '../../shared/picture';
import type { Target } from '../../shared/target';
import { forecastOf, type Recommend, type Recommendation } from '../recommended';
import { isPhotographic } from '../targets';

const NEUTRAL: ReadonlySet<Encoding> = new Set(['rgb-neutral', 'single-channel', 'lab-neutral']);

/** The recommended encoding, as the picture would print in it. */
export interface Alternative {
  recommendation: Recommendation;
  forecast: Forecast;
  probability: number;
  /** Whether its chance can be set against the picture's own: both rest on readings of the house's prints, or neither. */
  comparable: boolean;
}

/** Probability that an order shows a tint that is seen without a neutral beside it. */
const chanceOf = ({ tint }: Forecast) => tint.seen;

/** A picture on one target. */
export interface Print {
  picture: BookPicture;
  target: Target;
  forecast: Forecast;
  probability: number;
  /** Its ink values mean nothing to the process, which prints from R, G, B. */
  foreign: boolean;
  /** The recommended encoding where that would serve it clearly better. */
  better: Alternative | null;
  /** Nobody knows what another encoding would change: one was read from prints of the house, the other was not. */
  open: boolean;
  /** Its tint answers what prints of the house had: it is meant to be grey in print, whatever the file says. */
  corrected: boolean;
}

/** `gain`: how much another encoding must lower the chance. */
export function printOf(
  picture: BookPicture,
  target: Target,
  forecast: Forecast,
  recommend: Recommend,
  gain: number,
): Print {
  const foreign = isForeign(picture.facts.encoding, target, forecast.condition.reading);
  const known = { picture, target, forecast, foreign, probability: chanceOf(forecast) };
  const plain = { ...known, better: null, open: false, corrected: isCorrected(picture) };
  if (plain.corrected) return plain;
  // forecasts take their time: where nothing was read they are wanted only where one can be better
  const wanted = target.printRecord || canBeBettered(known, gain);
  const recommendation = wanted ? recommend(picture, target) : null;
  if (!recommendation) return plain;
  const open = recommendation.open === true;
  const converted = otherThan(picture, recommendation, target);
  if (!converted) return { ...plain, open };
  const isOtherGround = (converted.condition.reading === null) !== (forecast.condition.reading === null);
  const better = betterOf(known, { recommendation, forecast: converted }, gain);
  return { ...plain, better, open: open || isOtherGround };
}

/** Whose tint is none that is meant: a tone is, line art has none to speak of, and of one bit no process makes a grey. */
export const isToBeGrey = (picture: BookPicture): boolean =>
  picture.facts.encoding !== 'bilevel' && (picture.intent === 'grey' || isCorrected(picture));

/** A tint that was given to answer that of the house's prints; any other that is meant is none of this rule's. */
export const isCorrected = ({ facts, intent }: BookPicture): boolean =>
  intent === 'toned' && facts.remedied?.counter === true;

/** The picture as it would print in the recommended encoding; null where it has that, or nothing is known of it. */
const otherThan = (picture: BookPicture, recommendation: Recommendation, target: Target): Forecast | null =>
  recommendation.encoding === picture.facts.encoding ? null : forecastOf(recommendation, picture, target);

type Known = Pick<Print, 'picture' | 'target' | 'forecast' | 'foreign' | 'probability'>;

/** Dyes are driven by R, G, B in the end: of two neutral encodings neither prints clearly better. */
const canBeBettered = ({ picture, target, foreign, probability }: Known, gain: number): boolean =>
  foreign || (probability >= gain && !(isPhotographic(target) && NEUTRAL.has(picture.facts.encoding)));

function betterOf(
  known: Known,
  { recommendation, forecast }: Pick<Alternative, 'recommendation' | 'forecast'>,
  gain: number,
): Alternative | null {
  const { picture, target, foreign } = known;
  const probability = chanceOf(forecast);
  const alternative = {
    ...{ recommendation, forecast, probability },
    comparable: comparable(
      known.forecast.condition.reading,
      forecast.condition.reading,
      picture.facts.encoding,
    ),
  };
  // whatever the chances are: nobody knows what becomes of such inks
  if (foreign)
    return isForeign(recommendation.encoding, target, forecast.condition.reading) ? null : alternative;
  const isBetter = canBeBettered(known, gain) && known.probability - probability >= gain;
  return isBetter && alternative.comparable ? alternative : null;
}

/** Which way they lean as one set; null where that cannot be foretold. */
export const lean = (prints: readonly Print[]): Lean | null => leanOf(prints.map(({ forecast }) => forecast));

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

import { betterThan, type Choice, evenest, sendable, TIE, type Way } from '../print/choice';
import { forecastAs, greyEncodings } from '../print/restated';
import type { BookPicture } from '../shared/finding';
import type { Forecast } from '../shared/forecast';
import type { Encoding } from '../shared/picture';
import type { Target } from '../shared/target';
import { takes } from './accepted';
import { grouped } from './groups';
import { forecastsOf } from './targets';

/** The one encoding that every finding names for the grey pictures of a part on a target. */
export interface Recommendation {
  encoding: Encoding;
  /** `majority`: most of the part is stored so, and nothing prints clearly better. */
  why: 'majority' | Choice['why'];
  /** Others that the target takes are known by the process in general only, beside what was read: nobody knows what they would change. */
  open?: true;
  /** The others of the book were not looked at, and with them it may be another. */
  unsure?: true;
}

/** Null where the target takes no encoding that a grey picture could be turned into. */
export type Recommend = (picture: BookPicture, target: Target | null) => Recommendation | null;

/** Without a majority a gain that would not move one is a tie as well, up to this, whatever is asked of `likely-tint`. Own choice: the rule's default. */
const WIDEST_TIE = 0.2;
/** Pictures on a target that are forecast in every encoding: what they share decides, not their subjects. */
const SAMPLE = 5;

/**
 * Encodings that printing treats alike. A trace of colour over R = G = B does not make another encoding of it
 * (`residual-chroma` judges the trace); line art and colour are not compared with greys.
 */
export function kindOf({ facts }: BookPicture): Encoding | null {
  switch (facts.encoding) {
    case 'rgb-residual':
      return 'rgb-neutral';
    case 'bilevel':
    case 'colour':
    case 'unreadable':
      return null;
    default:
      return facts.encoding;
  }
}

/**
 * What to save the grey pictures of each part as. What most of the part is stored in stays, unless the encoding that
 * serves the target best lowers the chance of a visible tint by `gain` or more; each answer is worked out once. `partial`:
 * the book has more pictures. Chances that rest on readings of the house's prints and those that rest on none are never
 * set against each other.
 */
export function recommendations(pictures: readonly BookPicture[], gain: number, partial = false): Recommend {
  const greys = pictures.filter(picture => picture.intent === 'grey' && kindOf(picture) !== null);
  const waysOn = remembered((target: Target) => waysOf(greys.filter(printedOn(target)), target), nameOf);
  const of = remembered(
    ({ part, target }: { part: string | null; target: Target | null }): Recommendation | null => {
      const together = greys.filter(grey => grey.part === part && (!target || printedOn(target)(grey)));
      const found = target ? onTarget(together, target, waysOn(target), gain) : withoutTarget(together);
      const isOnly = target !== null && waysOn(target).length === 1;
      return found && partial && !isOnly ? { ...found, unsure: true } : found;
    },
    ({ part, target }) => JSON.stringify([part, target && nameOf(target)]),
  );
  return ({ part }, target) => of({ part, target });
}

const nameOf = ({ name }: Target) => name;
const printedOn =
  ({ name }: Target) =>
  ({ targets }: BookPicture) =>
    targets.some(target => target.name === name);

function remembered<T, R>(answer: (about: T) => R, key: (about: T) => string): (about: T) => R {
  const known = new Map<string, R>();
  return about => {
    const k = key(about);
    if (!known.has(k)) known.set(k, answer(about));
    return known.get(k)!;
  };
}

/** Nothing is known of its print: what is stored most often. */
function withoutTarget(together: readonly BookPicture[]): Recommendation {
  const { majority, often } = countsOf(together);
  if (majority) return { encoding: majority, why: 'majority' };
  // of equally frequent ones the order says which goes everywhere
  const usual: readonly Encoding[] = greyEncodings;
  const kinds = [...new Set([...usual, ...together.map(p => kindOf(p)!)])];
  return { encoding: kinds.sort((x, y) => often(y) - often(x))[0], why: 'frequent' };
}

function onTarget(
  together: readonly BookPicture[],
  target: Target,
  ways: readonly Way[],
  gain: number,
): Recommendation | null {
  const { majority } = countsOf(together.filter(picture => takes(target, picture)));
  // what would not move a majority sends nobody a longer way, or to a weaker black, where there is none
  const best = majority
    ? betterThanMost(majority, together, target, ways, gain)
    : evenest(ways, Math.max(TIE, Math.min(gain, WIDEST_TIE)));
  const told = best ?? (ways.length && majority ? { encoding: majority, why: 'majority' as const } : null);
  return told && { encoding: told.encoding, why: told.why, ...(isOpen(ways) && { open: true }) };
}

/** What to do with most of the pictures on a target; null where nothing is clearly better. */
function betterThanMost(
  majority: Encoding,
  together: readonly BookPicture[],
  target: Target,
  ways: readonly Way[],
  gain: number,
): Choice | null {
  const most = together.filter(picture => kindOf(picture) === majority);
  const prints = most.flatMap(picture =>
    forecastsOf(picture).filter(print => print.target.name === target.name),
  );
  const readings = new Set(prints.map(({ forecast }) => forecast.condition.reading));
  // nothing can be set against pictures of which some rest on readings and some do not
  if (readings.size !== 1) return null;
  const [reading] = readings;
  const probability = mean(prints.map(({ forecast }) => forecast.tint.seen));
  return betterThan({ encoding: majority, probability, reading }, ways, target, gain);
}

/** Of some ways prints of the house were read, of others not. */
const isOpen = (ways: readonly Way[]): boolean =>
  ways.some(({ reading }) => reading !== null) && ways.some(({ reading }) => reading === null);

/** How often each kind occurs, and the one of more than half. */
function countsOf(pictures: readonly BookPicture[]) {
  const groups = grouped(pictures, picture => kindOf(picture)!);
  const often = (kind: Encoding) => groups.find(([first]) => kindOf(first) === kind)?.length ?? 0;
  const most = groups.find(group => group.length * 2 > pictures.length);
  return { often, majority: most ? kindOf(most[0]) : null };
}

/** All that the target takes, by the forecasts of a few pictures. */
function waysOf(together: readonly BookPicture[], target: Target): Way[] {
  const { often } = countsOf(together.filter(picture => takes(target, picture)));
  const step = Math.max(1, Math.floor(together.length / SAMPLE));
  const sample = together.filter((_, i) => i % step === 0).slice(0, SAMPLE);
  return sendable(target).map(encoding => {
    const forecasts = sample.flatMap(({ facts }) => forecastAs(encoding, facts, target) ?? []);
    return {
      encoding,
      probability: mean(forecasts.map(({ tint }) => tint.seen)),
      black: {
        black: mean(forecasts.map(({ range }) => range.black)),
        blackDeepest: mean(forecasts.map(({ range }) => range.blackDeepest)),
        blackWeakest: mean(forecasts.map(({ range }) => range.blackWeakest)),
      },
      reading: forecasts[0]?.condition.reading ?? null,
      stored: often(encoding),
    };
  });
}

/** The picture's forecast if it were stored as recommended; null where no sound conversion to it is known. */
export function forecastOf(
  { encoding }: Recommendation,
  { facts }: BookPicture,
  target: Target,
): Forecast | null {
  // greys without colour in Lab reach every press as R = G = B do
  const grey = encoding === 'lab-neutral' ? 'rgb-neutral' : greyEncodings.find(known => known === encoding);
  return grey ? forecastAs(grey, facts, target) : null;
}

/** Stands for an encoding after "save it as". */
const BY_ALL = 'what a check of the whole book recommends';

/** `black-only, once the print house says that it takes it`: an encoding as a sentence ends with it. */
export function asTaken({ encoding, why, unsure }: Recommendation, target: Target | null): string {
  if (unsure) return BY_ALL;
  const sure = target?.encodings || encoding === 'rgb-neutral' || why === 'majority' || !target;
  return sure ? encoding : `${encoding}, once the print house says that it takes it`;
}

/**
 * What a picture is to be saved as, over all its targets: one encoding, or one for each target where they differ. Null
 * where there is nothing to recommend.
 */
export function saveAs(picture: BookPicture, recommend: Recommend): string | null {
  const found = (picture.targets.length ? picture.targets : [null]).flatMap(target => {
    const recommendation = recommend(picture, target);
    return recommendation
      ? [
          {
            target,
            encoding: recommendation.unsure ? BY_ALL : recommendation.encoding,
            words: asTaken(recommendation, target),
          },
        ]
      : [];
  });
  if (found.length === 0) return null;
  if (new Set(found.map(({ encoding }) => encoding)).size === 1) return found[0].words;
  return found.map(({ target, encoding }) => `${encoding} for target "${target!.name}"`).join(' and ');
}

const mean = (values: readonly number[]) =>
  values.length ? values.reduce((sum, value) => sum + value, 0) / values.length : 0;

import type { Basis, Forecast } from '../shared/forecast';
import type { PaperId, ProcessId, Target } from '../shared/target';
import { betterThan, isForeign, sendable, type Way } from './choice';
import { forecast } from './forecast';
import { paperOf } from './papers';
import { pressOf } from './press';
import type { Process } from './process';
import { processes } from './processes';
import { type GreyEncoding, greyEncodings, restated } from './restated';
import { defaultTarget } from './target';

/** One line of advice: a sound grey picture in one encoding on one process and paper. */
export interface EncodingAdvice {
  process: ProcessId;
  paper: PaperId | 'measured';
  encoding: GreyEncoding;
  /** `send` it, `convert` it first (to `better`), or `ask` the print house what it does with such files. */
  verdict: 'send' | 'convert' | 'ask';
  better: GreyEncoding | null;
  /** Of ten orders, how many are expected without a tint that is seen by itself (`tint.seen` of the forecast). */
  evenOrders: number;
  /** The same where the house does its best and its worst with such a file; equal where the route is known. */
  evenOrdersBest: number;
  evenOrdersWorst: number;
  /** One standard deviation of dCh (a*, b* together) from page to page of one order. */
  pageScatter: number;
  /** L* of its darkest black by the likeliest way of the house, and by those with the deepest and the weakest. */
  black: number;
  blackDeepest: number;
  blackWeakest: number;
  /** What the tint of the line rests on: public measurements, or priors. How much orders differ is a guess in all. */
  ground: 'measured' | 'guess';
}

/** By so much another encoding must lower the chance (0-1) of a visible tint to be worth a conversion: the default of the rule `likely-tint`. */
const WORTH_CONVERTING = 0.2;
/** Ways of the print house that differ by more even orders of 10 than this are worth a question. Own choice. */
const WORTH_ASKING = 4;

/** Probabilities of a tint that differ enough for a question; counted in whole orders of 10, as they are shown. */
export const worthAsking = (seen: readonly number[]): boolean => {
  const even = seen.map(evenOrdersOf).map(Math.round);
  return Math.max(...even) - Math.min(...even) > WORTH_ASKING;
};

const evenOrdersOf = (seen: number) => 10 * (1 - seen);

/** Greys of equal area from black to paper, in the file's L*. */
const SCALE = {
  zones: Array.from({ length: 12 }, (_, i) => ({ L: 8 + i * 7.5, weight: 1 / 12 })),
  histogram: null,
};

/** Papers that a process is printed on, its own first. */
export function papersFor(process: ProcessId): PaperId[] {
  const { paper, model } = processes.find(({ id }) => id === process)!;
  const { surface } = paperOf(paper);
  const usual: PaperId[] =
    surface === 'photographic'
      ? ['photo-lustre', 'photo-gloss']
      : surface === 'uncoated'
        ? ['uncoated', 'uncoated-bright', 'uncoated-warm']
        : ['gloss-coated', 'gloss-coated-bright', 'matt-coated'];
  const own = model.kind === 'inks' ? (Object.keys(model.byPaper ?? {}) as PaperId[]) : [];
  return [paper, ...[...usual, ...own].filter(id => id !== paper)].filter(
    (id, i, all) => all.indexOf(id) === i,
  );
}

/** EncodingAdvice on every grey encoding, for a target as it stands (its route, profile and record count). Computed anew. */
export function adviceFor(target: Target): EncodingAdvice[] {
  const press = pressOf(target);
  const taken = greyEncodings.filter(encoding => target.encodings?.includes(encoding) ?? true);
  const forecasts = taken.map(encoding => ({
    encoding,
    forecast: forecast(restated(encoding, SCALE, press), target),
  }));
  const offered = sendable(target);
  const ways = forecasts.filter(({ encoding }) => offered.includes(encoding)).map(wayOf);
  return forecasts.map(({ encoding, forecast: own }) => {
    const { reading } = own.condition;
    const best = betterThan(
      { encoding, probability: own.tint.seen, reading },
      ways,
      target,
      WORTH_CONVERTING,
    );
    const chances = chancesOf(own);
    const ask = isForeign(encoding, target, reading) || worthAsking(chances);
    return {
      process: target.process,
      paper: typeof target.paper === 'string' ? target.paper : 'measured',
      encoding,
      verdict: best ? 'convert' : ask ? 'ask' : 'send',
      better: best?.encoding ?? null,
      evenOrders: evenOrdersOf(own.tint.seen),
      evenOrdersBest: evenOrdersOf(Math.min(...chances)),
      evenOrdersWorst: evenOrdersOf(Math.max(...chances)),
      pageScatter: Math.hypot(own.spread.page.a, own.spread.page.b),
      black: own.range.black,
      blackDeepest: own.range.blackDeepest,
      blackWeakest: own.range.blackWeakest,
      ground: isMeasured(press.process, encoding, own.condition.basis) ? 'measured' : 'guess',
    };
  });
}

const wayOf = ({ encoding, forecast }: { encoding: GreyEncoding; forecast: Forecast }): Way => ({
  encoding,
  probability: forecast.tint.seen,
  black: forecast.range,
  reading: forecast.condition.reading,
  stored: 0,
});

/** Probability that a tint is seen, by each way of the house. */
const chancesOf = ({ routes, tint }: Forecast): number[] => routes?.map(way => way.tint.seen) ?? [tint.seen];

function isMeasured({ measuredFor }: Process, encoding: GreyEncoding, basis: Basis): boolean {
  return basis === 'data' ? (measuredFor?.includes(encoding) ?? true) : basis !== 'generic';
}

/** The whole table: every process on its usual papers, route unknown, D50. */
export const adviceTable = (): EncodingAdvice[] =>
  processes.flatMap(({ id }) =>
    papersFor(id).flatMap(paper => adviceFor({ ...defaultTarget(id), paper } as Target & { paper: PaperId })),
  );

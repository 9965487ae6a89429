import type { Basis, Forecast } from '../shared/forecast';
import type { PaperId, ProcessId, Target } from '../shared/target';
import { visibleShare } from './bands';
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
  /** Of ten orders, how many are expected without a tint that is seen by itself (dCh below 2). */
  evenOrders: number;
  /** The same where the house does its best and its worst with such a file; equal where the route is known. */
  evenOrdersBest: number;
  evenOrdersWorst: number;
  /** One standard deviation of dCh (a*, b* together) from page to page of one order. */
  pageScatter: number;
  /** L* of its darkest black. */
  black: number;
  /** What the tint of the line rests on: public measurements, or priors. How much orders differ is a guess in all. */
  ground: 'measured' | 'guess';
}

/** Another encoding must lower the probability of a visible tint by this much to be worth a conversion. */
const WORTH_CONVERTING = 0.2;
/** Ways of the print house that differ by more than this are worth a question. */
const WORTH_ASKING = 0.3;

/** Encodings that say how much ink, of a press that the file was made for. */
const inkEncodings: readonly GreyEncoding[] = ['black-only', 'four-channel'];

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
  const seen = (f: Forecast) => visibleShare(f.tint.bands);
  // inks mean nothing to a press of R, G, B: what the house makes of them is the guess of whoever turns them
  const foreign = (encoding: GreyEncoding) =>
    press.process.signal === 'rgb' && inkEncodings.includes(encoding);
  const native = forecasts.filter(({ encoding }) => !foreign(encoding));
  const best = (native.length ? native : forecasts).reduce((x, y) =>
    seen(y.forecast) < seen(x.forecast) ? y : x,
  );
  return forecasts.map(({ encoding, forecast: own }) => {
    const ways = own.routes?.map(({ tint }) => visibleShare(tint.bands)) ?? [seen(own)];
    const isForeign = foreign(encoding);
    const convert =
      isForeign !== foreign(best.encoding) || seen(own) - seen(best.forecast) >= WORTH_CONVERTING;
    const ask = isForeign || Math.max(...ways) - Math.min(...ways) > WORTH_ASKING;
    return {
      process: target.process,
      paper: typeof target.paper === 'string' ? target.paper : 'measured',
      encoding,
      verdict: convert ? 'convert' : ask ? 'ask' : 'send',
      better: convert ? (isForeign ? native[0] : best).encoding : null,
      evenOrders: 10 * (1 - seen(own)),
      evenOrdersBest: 10 * (1 - Math.min(...ways)),
      evenOrdersWorst: 10 * (1 - Math.max(...ways)),
      pageScatter: Math.hypot(own.spread.page.a, own.spread.page.b),
      black: own.range.black,
      ground: isMeasured(press.process, encoding, own.condition.basis) ? 'measured' : 'guess',
    };
  });
}

function isMeasured({ measuredFor }: Process, encoding: GreyEncoding, basis: Basis): boolean {
  return basis === 'data' ? (measuredFor?.includes(encoding) ?? true) : basis !== 'generic';
}

/** The whole table: every process on its usual papers, route unknown, D50. */
export const adviceTable = (): EncodingAdvice[] =>
  processes.flatMap(({ id }) =>
    papersFor(id).flatMap(paper => adviceFor({ ...defaultTarget(id), paper } as Target & { paper: PaperId })),
  );

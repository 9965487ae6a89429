// no-unit-test: test/report/sheet/index.test.ts checks what it puts together
import { lights, papers, processes } from '../../print';
import { closedBelow } from '../../print/closed';
import { processOf } from '../../print/processes';
import { ground, keepsInks } from '../../rules/targets';
import type { Forecast } from '../../shared/forecast';
import type { PictureFacts } from '../../shared/picture';
import type { Condition } from '../../shared/sheet';
import type { Target } from '../../shared/target';
import { encodingLines, ownLine } from './encoding-lines';
import { expectations, figuresOf } from './expect';
import { possibleOrders, tintedWords } from './orders';

/** A forecast of a picture with these facts, ready to show, with the ten possible orders of `series` drawn. */
export function conditionOf(
  target: Target,
  forecast: Forecast,
  series: number,
  { encoding, tone, space }: PictureFacts,
): Condition {
  const { process, paper, light } = target;
  const orders = possibleOrders(forecast, target, series);
  const encodings = encodingLines(target, encoding);
  const of = { toned: encoding === 'rgb-toned' };
  return {
    target: target.name,
    process: nameOf(processes, process),
    paper: typeof paper === 'string' ? nameOf(papers, paper) : 'Your own paper, as measured',
    light: nameOf(lights, light),
    basis: forecast.condition.basis,
    basisWords: capital(ground(forecast)),
    orders,
    tinted: tintedWords(orders, of.toned),
    expect: expectations(forecast, of),
    bands: forecast.tint.bands,
    tones: tonesOf(forecast),
    closed: closedOf(forecast, tone),
    inkLimit: space === 'cmyk' ? inkLimitOf(target) : null,
    own: ownLine(forecast, encodings),
    figures: figuresOf(forecast, of),
    ground: forecast.ground.map(capital),
    encodings,
  };
}

const tonesOf = ({ zones, range: { black, white } }: Forecast): Condition['tones'] => ({
  zones: zones.map(({ L, Lprint }) => ({ L, Lprint })),
  range: { black, white },
});

/** Counted by the file's own tones, in steps of L* 1 as the forecast counts them. */
function closedOf(forecast: Forecast, tone: PictureFacts['tone']): Condition['closed'] {
  const below = closedBelow(forecast);
  const share = tone?.histogram.reduce((sum, part, L) => (L < below ? sum + part : sum), 0) ?? 0;
  return { below, share };
}

/** Where the house separates anew, or takes R, G, B, the file's own inks do not lie on the paper. */
function inkLimitOf(target: Target): Condition['inkLimit'] {
  if (!keepsInks(target)) return null;
  const percent = target.inkLimit ?? processOf(target.process).inkLimit;
  return percent === null ? null : { percent, stated: target.inkLimit !== null };
}

const nameOf = (list: readonly { id: string; name: string }[], id: string) =>
  list.find(entry => entry.id === id)?.name ?? id;

const capital = (text: string) => text[0].toUpperCase() + text.slice(1);

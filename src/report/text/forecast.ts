import { lights, paperProblem, papers, processes } from '../../print';
import { blackWords } from '../../rules/black';
import { groundInFull } from '../../rules/targets';
import { inOrders } from '../../rules/words';
import type { AB, Forecast } from '../../shared/forecast';
import type { PaperId } from '../../shared/target';
import { CAUTION } from '../caution';
import type { SettingsUsed, Subject } from '../json';
import { nothingWords } from '../nothing';
import { directionWords, expectations, figuresOf, isLineWork, signed } from '../sheet/expect';
import { waysOf } from '../sheet/ways';
import { paintOf, type Style, safe } from './style';
import { columns, indent, wrap } from './wrap';

/** So many conditions are told in full, one after the other; more make a table. */
const IN_FULL = 3;

/** Forecasts for people: a few in words and figures, many as a table. */
export function forecastText(subject: Subject, forecasts: readonly Forecast[], style: Style): string {
  const paint = paintOf(style);
  const heading = [
    paint.bold(safe(subjectLine(subject))),
    ...(subject.settings ? wrap(safe(settingsWords(subject.settings)), style.width) : []),
  ].join('\n');
  if (!forecasts.length)
    return `${heading}\n\n${wrap(nothingWords(subject.inColour === true), style.width).join('\n')}\n`;
  const body = bodyOf(forecasts, subject, style);
  return `${[heading, ...body, wrap(CAUTION, style.width).join('\n')].join('\n\n')}\n`;
}

function bodyOf(forecasts: readonly Forecast[], { values, settings }: Subject, style: Style): string[] {
  const stated = values !== null;
  // a book's own targets are what was asked for, however many; they may differ in more than a table says
  if (forecasts.length <= Math.max(IN_FULL, settings?.targets.length ?? 0))
    return forecasts.map(forecast => inFull(forecast, stated, style).join('\n'));
  return isLineWork(forecasts[0], { stated })
    ? endsAlone(forecasts, style)
    : tables(forecasts, stated, style);
}

/** Which settings say how it is printed, or why they do not. */
function settingsWords({ file, role, targets, changed }: SettingsUsed): string {
  switch (role) {
    case 'used': {
      const names = targets.map(name => `"${name}"`).join(', ');
      const which = targets.length ? ` (${targets.length > 1 ? 'targets' : 'target'} ${names})` : '';
      return `By the settings in ${file}${which}${changed.length ? `, but ${changed.join(', ')} as asked` : ''}.`;
    }
    case 'silent':
      return `The settings in ${file} do not say how it is printed, so it is forecast for every process, or as asked.`;
    case 'no-target':
      return `The settings in ${file} have no target of this process: forecast as is usual for it.`;
    default:
      return `Not by the settings in ${file}, since --process was named; with "--settings ${file}" too, what they say of that process counts.`;
  }
}

export function subjectLine({ path, page, space, values }: Subject): string {
  if (!values) return page && page > 1 ? `${path} (page ${page})` : `${path}`;
  if (space === 'cmyk') return values.map((value, at) => `${'CMYK'[at]} ${value} %`).join(', ');
  return space === 'rgb' ? `R, G, B ${values.join(', ')} of 255` : `Grey ${values[0]} of 255`;
}

function inFull(forecast: Forecast, stated: boolean, style: Style): string[] {
  const paint = paintOf(style);
  const { tint, direction, range } = expectations(forecast, { stated });
  const figures: [string, string][] = stated
    ? [['The print itself, L* / a* / b*', point(forecast)], ...figuresOf(forecast, { stated })]
    : figuresOf(forecast);
  return [
    ...wrap(`${conditionWords(forecast)}: ${groundInFull(forecast)}.`, style.width, 2).map(paint.bold),
    ...indent(wrap(saidFirst(forecast), style.width - 2), 2),
    ...indent(wrap([tint, direction, range].filter(Boolean).join(' '), style.width - 2), 2),
    '',
    ...indent(columns(figures), 2),
    '',
    ...waysTold(forecast, stated, style),
    '  What this rests on',
    ...forecast.ground
      .flatMap(sentence => indent(wrap(`- ${sentence}`, style.width - 2, 2), 2))
      .map(paint.dim),
  ];
}

/** Each way of the print house by itself: their mean is printed by none. */
function waysTold(forecast: Forecast, stated: boolean, style: Style): string[] {
  const ways = waysOf(forecast, stated);
  if (ways.length === 0) return [];
  const lines = ways.flatMap(({ weight, label, prints }) =>
    wrap(`- ${weight}: ${label}: ${prints}`, style.width - 2, 2),
  );
  return [`  ${WAYS}`, ...indent(lines, 2), ''];
}

const WAYS = 'What the print house may do with it (how likely each is, is our guess)';

const conditionWords = ({ condition: { process, paper, light } }: Forecast) =>
  [nameIn(processes, process), nameIn(papers, paper), nameIn(lights, light)].join('; ');

/** Many conditions of line work, which has no tint to make a table of: how deep its black comes out. */
function endsAlone(forecasts: readonly Forecast[], style: Style): string[] {
  const lines = forecasts.flatMap(forecast =>
    wrap(
      `${conditionWords(forecast)}: ${expectations(forecast).range} ${saidFirst(forecast)}`.trim(),
      style.width,
      2,
    ),
  );
  return [expectations(forecasts[0]).tint, lines.join('\n')];
}

/** One table a press, a light a row; all of one light in one table. Of a stated value the print's L* is told too. */
function tables(forecasts: readonly Forecast[], stated: boolean, style: Style): string[] {
  const table = (rows: string[][], more: readonly string[] = []) => {
    const cells = columns([...headOf(stated, more), ...rows]);
    return indent(cells, 2);
  };
  const oneLight = forecasts.every(({ condition }) => condition.light === forecasts[0].condition.light);
  const doubts = [...new Set(forecasts.map(saidFirst))]
    .filter(Boolean)
    .map(doubt => wrap(doubt, style.width).join('\n'));
  const legend = wrap(LEGEND, style.width).join('\n');
  if (oneLight) {
    const rows = forecasts.map(f => [
      f.condition.process,
      ...rowOf(f, stated),
      blackWords(f.range).replace(' to ', '–'),
    ]);
    const light = wrap(`${nameIn(lights, forecasts[0].condition.light)}`, style.width, 2);
    return [
      [...light.map(paintOf(style).bold), ...table(rows, ['black L*'])].join('\n'),
      legend,
      wrap(`${grounds(forecasts)} ${OTHER_LIGHTS}`, style.width).join('\n'),
      ...doubts,
    ];
  }
  const presses = [...new Set(forecasts.map(pressId))];
  const blocks = presses.map(process => {
    const own = forecasts.filter(f => pressId(f) === process);
    const rows = own.map(f => [f.condition.light, ...rowOf(f, stated)]);
    return [...wrap(pressLine(own[0]), style.width, 2).map(paintOf(style).bold), ...table(rows)].join('\n');
  });
  return [...blocks, legend, ...doubts];
}

const LEGEND =
  "Tint: how far the print's grey is from the grey aim of its paper in the same light, the mean of many orders. Beside another paper: how far from a true neutral. A tint is seen by itself from about 2 up in the a*, b* plane (dCh); from 1 to 2 only beside a neutral grey. An order counts if that is on a quarter of the picture. It leans where the direction can be foretold; – where it cannot.";
const OTHER_LIGHTS = 'Other lights: name a process, or --light all.';

/** Said where nobody prints so, and of what was asked for beyond the condition; else nothing. */
export function saidFirst({ condition: { process, paper }, notes }: Forecast): string {
  const doubt = paper === 'measured' ? null : paperProblem(process, paper as PaperId);
  return [doubt && `${doubt[0].toUpperCase()}${doubt.slice(1)}.`, ...notes].filter(Boolean).join(' ');
}

/** Two lines of heads, so that a table is no wider than a terminal. */
function headOf(stated: boolean, more: readonly string[]): string[][] {
  const heads: [string, string][] = [
    ['', ''],
    ...(stated ? [['', 'L*'] as [string, string]] : []),
    ['tint', 'a*, b*'],
    ['beside another', 'paper a*, b*'],
    ['a tint is seen', 'in orders'],
    ['it', 'leans'],
    ...more.map(head => head.split(' ') as [string, string]),
  ];
  return [0, 1].map(line => heads.map(head => head[line]));
}

function rowOf(forecast: Forecast, stated: boolean): string[] {
  const { zones, tint, absolute } = forecast;
  return [
    ...(stated ? [zones[0].Lprint.toFixed(0)] : []),
    pair(tint),
    pair(absolute),
    inTable(tint.seen),
    directionWords(forecast)?.replace(' to ', '/') ?? '–',
  ];
}

const pair = ({ a, b }: AB) =>
  `${signed(a)}, ${signed(b)}`.replace(/^0\.0/, ' 0.0').replace(/ 0\.0$/, '  0.0');

/** "in about 3 orders of 10" where the head of a column has said the most of it. */
const inTable = (probability: number) =>
  inOrders(probability)
    .replace(/^in /, '')
    .replace(/ orders? of/, ' of');

/** Which of the processes rest on public data, and that none is the reader's own printer. */
function grounds(forecasts: readonly Forecast[]): string {
  const tintFrom = (what: string, data: boolean) => {
    const ids = forecasts.filter(f => (f.condition.basis === 'data') === data).map(f => f.condition.process);
    return ids.length ? ` The tint rests on ${what} for ${ids.join(', ')}.` : '';
  };
  return `Generic processes, not your printer.${tintFrom('public press data', true)}${tintFrom('priors and generic dyes', false)} How much orders differ is a guess for all.`;
}

function pressLine(forecast: Forecast): string {
  const { condition, range } = forecast;
  const names = `${nameIn(processes, condition.process)}; ${nameIn(papers, condition.paper)}`;
  return `${names}; black L* ${blackWords(range)} (${groundInFull(forecast)})`;
}

const pressId = ({ condition: { process, paper } }: Forecast) => `${process} ${paper}`;

const point = ({ zones: [zone] }: Forecast) =>
  `${zone.Lprint.toFixed(0)} / ${signed(zone.a)} / ${signed(zone.b)}`;

const nameIn = (list: readonly { id: string; name: string }[], id: string) =>
  list.find(entry => entry.id === id)?.name ?? 'A paper of your own, as measured';

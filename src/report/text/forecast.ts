import { lights, papers, processes } from '../../print';
import { visibleShare } from '../../print/bands';
import { ground } from '../../rules/targets';
import { inOrders } from '../../rules/words';
import type { Forecast } from '../../shared/forecast';
import type { Subject } from '../json';
import { expectations, figuresOf } from '../sheet/expect';
import { paintOf, type Style, safe } from './style';
import { columns, indent, wrap } from './wrap';

const CAUTION =
  'A forecast is no proof: have a test print made before the run, and let the print house’s own advice go first.';

/** So many conditions are told in full, one after the other; more make a table. */
const IN_FULL = 3;

/** Forecasts for people: a few in words and figures, many as a table. */
export function forecastText(subject: Subject, forecasts: readonly Forecast[], style: Style): string {
  const paint = paintOf(style);
  const heading = paint.bold(safe(subjectLine(subject)));
  if (!forecasts.length)
    return `${heading}\n\nNothing can be forecast: it is no grey, or it has no pixel that prints.\n`;
  const body =
    forecasts.length > IN_FULL
      ? tables(forecasts, subject.values !== null, style)
      : forecasts.map(forecast => inFull(forecast, style).join('\n'));
  return `${[heading, ...body, wrap(CAUTION, style.width).join('\n')].join('\n\n')}\n`;
}

export function subjectLine({ path, page, space, values }: Subject): string {
  if (!values) return page && page > 1 ? `${path} (page ${page})` : `${path}`;
  if (space === 'cmyk') return values.map((value, at) => `${'CMYK'[at]} ${value} %`).join(', ');
  return space === 'rgb' ? `R, G, B ${values.join(', ')} of 255` : `Grey ${values[0]} of 255`;
}

function inFull(forecast: Forecast, style: Style): string[] {
  const { condition, zones } = forecast;
  const paint = paintOf(style);
  const { tint, direction, range } = expectations(forecast);
  const words = [
    nameIn(processes, condition.process),
    nameIn(papers, condition.paper),
    nameIn(lights, condition.light),
  ];
  const figures: [string, string][] =
    zones.length === 1
      ? [['The print itself, L* / a* / b*', point(forecast)], ...figuresOf(forecast)]
      : figuresOf(forecast);
  return [
    ...wrap(`${words.join('; ')}: ${ground(forecast)}.`, style.width, 2).map(paint.bold),
    ...indent(wrap(`${tint} ${direction} ${range}`, style.width - 2), 2),
    '',
    ...indent(columns(figures), 2),
    '',
    '  What this rests on',
    ...forecast.ground
      .flatMap(sentence => indent(wrap(`- ${sentence}`, style.width - 2, 2), 2))
      .map(paint.dim),
  ];
}

/** One table a press, a light a row; all of one light in one table. Of a stated value the print's colour is told too. */
function tables(forecasts: readonly Forecast[], stated: boolean, style: Style): string[] {
  const oneLight = forecasts.every(({ condition }) => condition.light === forecasts[0].condition.light);
  if (oneLight) {
    const rows = forecasts.map(f => [f.condition.process, ...rowOf(f, stated), f.range.black.toFixed(0)]);
    const head = ['', ...headOf(stated), 'black L*'];
    const light = wrap(`${nameIn(lights, forecasts[0].condition.light)}`, style.width, 2);
    return [
      [...light, ...indent(columns([head, ...rows], [...numeric(stated), head.length - 1]), 2)].join('\n'),
    ];
  }
  const presses = [...new Set(forecasts.map(f => f.condition.process))];
  return presses.map(process => {
    const own = forecasts.filter(f => f.condition.process === process);
    const rows = own.map(f => [f.condition.light, ...rowOf(f, stated)]);
    return [
      ...wrap(pressLine(own[0]), style.width, 2).map(paintOf(style).bold),
      ...indent(columns([['', ...headOf(stated)], ...rows], numeric(stated)), 2),
    ].join('\n');
  });
}

const headOf = (stated: boolean) => [...(stated ? ['L*', 'a*', 'b*'] : []), 'a tint is seen', 'it leans'];
const numeric = (stated: boolean) => (stated ? [1, 2, 3] : []);

function rowOf({ zones, tint }: Forecast, stated: boolean): string[] {
  const [zone] = zones;
  return [
    ...(stated ? [zone.Lprint.toFixed(0), signed(zone.a), signed(zone.b)] : []),
    inOrders(visibleShare(tint.bands)),
    tint.direction ?? 'not predictable',
  ];
}

function pressLine(forecast: Forecast): string {
  const { condition, range } = forecast;
  const names = `${nameIn(processes, condition.process)}; ${nameIn(papers, condition.paper)}`;
  return `${names}; black L* ${range.black.toFixed(0)} (${ground(forecast)})`;
}

const point = ({ zones: [zone] }: Forecast) =>
  `${zone.Lprint.toFixed(0)} / ${signed(zone.a)} / ${signed(zone.b)}`;

function signed(value: number): string {
  const text = Math.abs(value).toFixed(1);
  if (Number(text) === 0) return '0.0';
  return value > 0 ? `+${text}` : `−${text}`;
}

const nameIn = (list: readonly { id: string; name: string }[], id: string) =>
  list.find(entry => entry.id === id)?.name ?? 'A paper of your own, as measured';

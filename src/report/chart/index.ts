import { lights, papers, processes } from '../../print';
import { wholeSpread } from '../../print/scatter';
import { ground } from '../../rules/targets';
import type { Forecast } from '../../shared/forecast';
import { type Html, html } from '../page/html';
import { expectations, isLineWork, signed, sizesOf } from '../sheet/expect';
import { waysOf } from '../sheet/ways';
import { saidFirst } from '../text/forecast';
import { wrap } from '../text/wrap';
import { CHART } from './own';
import { plane } from './plane';
import { range } from './range';

const WIDTH = 940;
const PANEL = 492;
const MARGIN = 20;
const TOP = 100;
/** Characters of the words beside the drawings. */
const WORDS = 56;
const LINE = 15;

const CAPTION = [
  'Ellipses: one and two standard deviations of a picture’s mean tint over houses and orders, numbered by the ways of the',
  'print house; heavier is likelier. Thin and grey: one standard deviation by the likeliest way under another light. The aim',
  'of the paper is in the middle. No proof: have a test print made before the run.',
];
const LINE_WORK_CAPTION = ['No proof: have a test print made before the run.'];
/** In the plane's place. */
const NO_PLANE = ['No ellipses are drawn: black or white alone', 'has no grey that could be tinted.'];

/** Forecasts as a drawing (SVG): the a*, b* plane, the printable range, and the same in words, a press a panel. `stated`: of a value, not a picture. */
export function forecastChart(subject: string, forecasts: readonly Forecast[], stated = false): string {
  const presses = [...new Set(forecasts.map(pressOf))];
  const isLine = forecasts.length > 0 && isLineWork(forecasts[0], { stated });
  const caption = isLine ? LINE_WORK_CAPTION : CAPTION;
  const height = TOP + Math.max(1, presses.length) * PANEL + MARGIN;
  return `${
    html`<svg xmlns="http://www.w3.org/2000/svg" class="${CHART}" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img" aria-labelledby="title" font-family="sans-serif" font-size="13">
<title id="title">Forecast: ${subject}</title>
<style>.small{font-size:11px}.end{text-anchor:end}.strong{font-weight:bold}</style>
<rect width="100%" height="100%" fill="#fff"/>
<text x="${MARGIN}" y="28" font-size="17" class="strong">${subject}</text>
${caption.map((line, i) => html`<text x="${MARGIN}" y="${48 + 16 * i}">${line}</text>`)}
${presses.length === 0 && html`<text x="${MARGIN}" y="${TOP + 20}">Nothing can be forecast: it is no grey, or it has no pixel that prints.</text>`}
${presses.map((press, i) =>
  panel(
    forecasts.filter(forecast => pressOf(forecast) === press),
    TOP + i * PANEL,
    { stated, isLine },
  ),
)}
</svg>`.text
  }\n`;
}

const pressOf = ({ condition }: Forecast) => `${condition.process} ${condition.paper}`;

interface Drawn {
  stated: boolean;
  /** No grey in it: nothing that a tint could be drawn of. */
  isLine: boolean;
}

function panel(forecasts: readonly Forecast[], top: number, drawn: Drawn): Html {
  const [first] = forecasts;
  const { condition } = first;
  const name = `${nameIn(processes, condition.process)}; ${nameIn(papers, condition.paper)}`;
  const light = `${nameIn(lights, condition.light)}: ${ground(first)}`;
  return html`<svg x="${MARGIN}" y="${top}" width="${WIDTH - 2 * MARGIN}" height="${PANEL}">
<text x="0" y="14" class="strong">${name}</text>
<text x="0" y="31">${light}</text>
<svg x="0" y="42" width="${WIDTH - 2 * MARGIN}" height="${PANEL - 42}">${drawn.isLine ? noPlane : plane(forecasts)}${range(first, drawn.isLine)}${words(forecasts, drawn)}</svg>
</svg>`;
}

const lines = (texts: readonly string[], top: number) =>
  texts.map((text, i) => html`<text x="0" y="${top + LINE * i}" class="small">${text}</text>`);

const noPlane = html`<svg x="0" y="0" width="300" height="300">${lines(NO_PLANE, 24)}</svg>`;

function words([forecast, ...others]: readonly Forecast[], { stated, isLine }: Drawn): Html {
  const { tint, direction, range: tonal } = expectations(forecast, { stated });
  const figures = isLine ? [] : sizesOf(forecast.tint, { stated });
  const ways = waysOf(forecast, stated).flatMap(({ weight, label, prints }, i) => [
    `${i + 1}  ${weight}: ${label}`,
    `    ${prints}`,
  ]);
  const dots = isLine ? [] : others;
  const seen = dots.map(({ condition, tint, spread }) => {
    const { a, b } = wholeSpread(spread);
    return `${condition.light} ${signed(tint.a)}/${signed(tint.b)} ± ${a.toFixed(1)}/${b.toFixed(1)}`;
  });
  const all = [
    ...wrap([saidFirst(forecast), tint, direction, tonal].filter(Boolean).join(' '), WORDS),
    ...(figures.length
      ? ['', ...figures.map(([label, value]) => (value ? `${label.replace(/^ +/, '– ')}: ${value}` : label))]
      : []),
    ...(ways.length ? ['', 'Ways of the print house; how likely each is, is our guess:', ...ways] : []),
    ...(seen.length
      ? ['', ...wrap(`Tint under other lights (grey), ± one standard deviation: ${seen.join(', ')}.`, WORDS)]
      : []),
  ];
  return html`<svg x="560" y="0" width="340" height="${PANEL - 42}">${lines(all, 14)}</svg>`;
}

const nameIn = (list: readonly { id: string; name: string }[], id: string) =>
  list.find(entry => entry.id === id)?.name ?? 'A paper of your own, as measured';

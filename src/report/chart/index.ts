import { lights, papers, processes } from '../../print';
import { wholeSpread } from '../../print/scatter';
import { ground } from '../../rules/targets';
import type { Forecast } from '../../shared/forecast';
import { nothingWords } from '../nothing';
import { type Html, html } from '../page/html';
import { expectations, isLineWork, signed, sizesOf } from '../sheet/expect';
import { waysOf } from '../sheet/ways';
import { saidFirst } from '../text/forecast';
import { wrap } from '../text/wrap';
import { CHART } from './own';
import { plane } from './plane';
import { range } from './range';

const WIDTH = 940;
/** Above the drawings of a panel, and their height. */
const HEAD = 42;
const DRAWINGS = 330;
const MARGIN = 20;
const TOP = 100;
/** Characters of the words beside the drawings. */
const WORDS = 56;
const LINE = 15;

const CAPTION = [
  "Ellipses: one and two standard deviations of a picture's mean tint over houses and orders, numbered by the ways of the",
  'print house; heavier is likelier. Thin and grey: one standard deviation by the likeliest way under another light. The aim',
  'of the paper is in the middle. No proof: have a test print made before the run.',
];
const LINE_WORK_CAPTION = ['No proof: have a test print made before the run.'];
/** In the plane's place. */
const NO_PLANE = ['No ellipses are drawn: black or white alone', 'has no grey that could be tinted.'];

/** Forecasts as a drawing (SVG): the a*, b* plane, the printable range, and the same in words, a press a panel. `stated`: of a value, not a picture; `inColour`: of a picture that has none for that. */
export function forecastChart(
  subject: string,
  forecasts: readonly Forecast[],
  stated = false,
  inColour = false,
): string {
  const presses = [...new Set(forecasts.map(pressOf))];
  const isLine = forecasts.length > 0 && isLineWork(forecasts[0], { stated });
  const caption = isLine ? LINE_WORK_CAPTION : CAPTION;
  const panels = presses.map(press => {
    const own = forecasts.filter(forecast => pressOf(forecast) === press);
    return { own, words: words(own, { stated, isLine }) };
  });
  const most = Math.max(0, ...panels.map(panel => panel.words.length));
  const panelHeight = HEAD + Math.max(DRAWINGS, LINE * (most + 1));
  const height = TOP + Math.max(1, panels.length) * panelHeight + MARGIN;
  return `${
    html`<svg xmlns="http://www.w3.org/2000/svg" class="${CHART}" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" role="img" aria-labelledby="title" font-family="sans-serif" font-size="13">
<title id="title">Forecast: ${subject}</title>
<style>.small{font-size:11px}.end{text-anchor:end}.strong{font-weight:bold}</style>
<rect width="100%" height="100%" fill="#fff"/>
<text x="${MARGIN}" y="28" font-size="17" class="strong">${subject}</text>
${caption.map((line, i) => html`<text x="${MARGIN}" y="${48 + 16 * i}">${line}</text>`)}
${presses.length === 0 && html`<text x="${MARGIN}" y="${TOP + 20}">${nothingWords(inColour)}</text>`}
${panels.map((of, i) => panel(of.own, of.words, isLine, { top: TOP + i * panelHeight, height: panelHeight }))}
</svg>`.text
  }\n`;
}

const pressOf = ({ condition }: Forecast) => `${condition.process} ${condition.paper}`;

interface Drawn {
  stated: boolean;
  /** No grey in it: nothing that a tint could be drawn of. */
  isLine: boolean;
}

function panel(
  forecasts: readonly Forecast[],
  told: readonly string[],
  isLine: boolean,
  { top, height }: { top: number; height: number },
): Html {
  const [first] = forecasts;
  const { condition } = first;
  const name = `${nameIn(processes, condition.process)}; ${nameIn(papers, condition.paper)}`;
  const light = `${nameIn(lights, condition.light)}: ${ground(first)}`;
  return html`<svg x="${MARGIN}" y="${top}" width="${WIDTH - 2 * MARGIN}" height="${height}">
<text x="0" y="14" class="strong">${name}</text>
<text x="0" y="31">${light}</text>
<svg x="0" y="${HEAD}" width="${WIDTH - 2 * MARGIN}" height="${height - HEAD}">${isLine ? noPlane : plane(forecasts)}${range(first, isLine)}<svg x="560" y="0" width="340" height="${height - HEAD}">${lines(told, 14)}</svg></svg>
</svg>`;
}

const lines = (texts: readonly string[], top: number) =>
  texts.map((text, i) => html`<text x="0" y="${top + LINE * i}" class="small">${text}</text>`);

const noPlane = html`<svg x="0" y="0" width="300" height="300">${lines(NO_PLANE, 24)}</svg>`;

/** A panel in words, line by line. */
function words([forecast, ...others]: readonly Forecast[], { stated, isLine }: Drawn): string[] {
  const { tint, direction, range: tonal } = expectations(forecast, { stated });
  const figures = isLine ? [] : sizesOf(forecast.tint, { stated });
  const ways = waysOf(forecast, stated).flatMap(({ weight, label, prints }, i) =>
    wrap(`${i + 1}: ${weight}, ${label}: ${prints}`, WORDS),
  );
  const dots = isLine ? [] : others;
  const seen = dots.map(({ condition, tint, spread }) => {
    const { a, b } = wholeSpread(spread);
    return `${condition.light} ${signed(tint.a)}/${signed(tint.b)} ± ${a.toFixed(1)}/${b.toFixed(1)}`;
  });
  return [
    ...wrap([saidFirst(forecast), tint, direction, tonal].filter(Boolean).join(' '), WORDS),
    ...(figures.length
      ? ['', ...figures.map(([label, value]) => (value ? `${label.replace(/^ +/, '– ')}: ${value}` : label))]
      : []),
    ...(ways.length ? ['', 'Ways of the print house; how likely each is, is our guess:', ...ways] : []),
    ...(seen.length
      ? ['', ...wrap(`Tint under other lights (grey), ± one standard deviation: ${seen.join(', ')}.`, WORDS)]
      : []),
  ];
}

const nameIn = (list: readonly { id: string; name: string }[], id: string) =>
  list.find(entry => entry.id === id)?.name ?? 'A paper of your own, as measured';

// no-unit-test: part of a drawing that test/report/chart/index.test.ts reads whole
import { wholeSpread } from '../../print/scatter';
import type { AB, Forecast, RouteForecast } from '../../shared/forecast';
import { type Html, html } from '../page/html';

/** Size of the drawing in its own units. */
const SIDE = 300;
const MIDDLE = SIDE / 2;
/** The limits between neutral, faint, visible, obvious and heavy. */
const LIMITS = [1, 2, 4, 7];

/** Forecasts of one press: every route's ellipses under the first light, and the likeliest route's under the others. */
export function plane(forecasts: readonly Forecast[]): Html {
  const [first, ...others] = forecasts;
  const ways = waysOf(first);
  const lit = others.map(other => ({ light: other.condition.light, way: likeliest(waysOf(other)) }));
  const reach = reachOf([...ways, ...lit.map(({ way }) => way)]);
  const scale = (SIDE / 2 - 22) / reach;
  const at = ({ a, b }: AB) => ({ x: MIDDLE + a * scale, y: MIDDLE - b * scale });
  return html`<svg x="0" y="0" width="${SIDE}" height="${SIDE}" viewBox="0 0 ${SIDE} ${SIDE}">
<rect width="${SIDE}" height="${SIDE}" fill="#fff" stroke="#999"/>
${LIMITS.filter(limit => limit < reach).map(
  limit => html`<circle cx="${MIDDLE}" cy="${MIDDLE}" r="${px(limit * scale)}" fill="none" stroke="#bbb"/>
<text x="${px(MIDDLE + 3)}" y="${px(MIDDLE - limit * scale - 3)}" class="small">${limit}</text>`,
)}
<path d="M10 ${MIDDLE}H${SIDE - 10}M${MIDDLE} 10V${SIDE - 10}" stroke="#bbb"/>
<text x="${SIDE - 8}" y="${MIDDLE + 14}" class="small end">+a* pinkish</text>
<text x="8" y="${MIDDLE + 14}" class="small">−a* greenish</text>
<text x="${MIDDLE + 5}" y="15" class="small">+b* yellowish</text>
<text x="${MIDDLE + 5}" y="${SIDE - 8}" class="small">−b* bluish</text>
${lit.map(({ light, way }) => underLight(light, way, at(way.tint), scale))}
${ways.map((way, i) => ellipses(way, ways.length > 1 ? `${i + 1}` : '', at(way.tint), scale))}
</svg>`;
}

type Way = Pick<RouteForecast, 'tint' | 'spread' | 'weight'>;

const waysOf = ({ routes, tint, spread }: Forecast): Way[] => routes ?? [{ tint, spread, weight: 1 }];

const likeliest = (ways: readonly Way[]): Way =>
  ways.reduce((best, way) => (way.weight > best.weight ? way : best));

/** Half the width of the plane in CIELAB: all centres with two standard deviations, at least the band of 7. */
function reachOf(ways: readonly Way[]): number {
  const most = ways.map(({ tint, spread }) => {
    const sd = wholeSpread(spread);
    return Math.max(Math.abs(tint.a) + 2 * sd.a, Math.abs(tint.b) + 2 * sd.b);
  });
  return Math.ceil(Math.max(8, ...most));
}

interface Point {
  x: number;
  y: number;
}

/** One and two standard deviations, with the number of the way; heavier lines for what is likelier. */
function ellipses(way: Way, name: string, { x, y }: Point, scale: number): Html {
  const { tint, weight } = way;
  const { turn, rings } = shapeOf(way, scale);
  const width = px(0.6 + 2 * weight);
  return html`<g transform="translate(${px(x)} ${px(y)})"><title>a* ${tint.a.toFixed(1)}, b* ${tint.b.toFixed(1)}</title><g transform="rotate(${turn})">${rings(1, html` stroke="#000" stroke-width="${width}" stroke-dasharray="none"`)}${rings(2, html` stroke="#000" stroke-width="${width}" stroke-dasharray="3 3"`)}<path d="M-4 0H4M0 -4V4" stroke="#000"/></g>${name && html`<text x="5" y="-5" class="small strong">${name}</text>`}</g>`;
}

/** One standard deviation under another light, named. */
function underLight(light: string, way: Way, { x, y }: Point, scale: number): Html {
  const { turn, rings } = shapeOf(way, scale);
  return html`<g transform="translate(${px(x)} ${px(y)})"><title>${light}</title><g transform="rotate(${turn})">${rings(1, html` stroke="#888" stroke-width="0.5"`)}</g><circle r="2.5" fill="#666"/><text x="4" y="10" font-size="9" fill="#444">${light}</text></g>`;
}

/** Ellipses of so many standard deviations about 0, 0, and how far (degrees, clockwise) they are turned. */
function shapeOf({ spread }: Way, scale: number) {
  const sd = wholeSpread(spread);
  const covariance = spread.corr * sd.a * sd.b;
  const turn = 0.5 * Math.atan2(2 * covariance, sd.a ** 2 - sd.b ** 2);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const along = Math.sqrt(Math.max(0, sd.a ** 2 * c * c + 2 * covariance * c * s + sd.b ** 2 * s * s));
  const across = Math.sqrt(Math.max(0, sd.a ** 2 * s * s - 2 * covariance * c * s + sd.b ** 2 * c * c));
  return {
    turn: px((-turn * 180) / Math.PI),
    rings: (n: number, stroke: Html) =>
      html`<ellipse rx="${px(n * along * scale)}" ry="${px(n * across * scale)}" fill="none"${stroke}/>`,
  };
}

const px = (value: number) => Math.round(value * 100) / 100;

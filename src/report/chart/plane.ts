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
${lit.map(({ way }) => underLight(way, at(way.tint), scale))}
${ways.map(way => ellipses(way, at(way.tint), scale))}
${named(lit.map(({ light, way }) => ({ name: light, ...at(way.tint) })))}
${ways.length > 1 && ways.map((way, i) => numbered(`${i + 1}`, (2 * Math.PI * (i + 0.5)) / ways.length, way, at(way.tint), scale))}
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

/** One and two standard deviations; heavier lines for what is likelier. */
function ellipses(way: Way, { x, y }: Point, scale: number): Html {
  const { tint, weight } = way;
  const { turn, along, across } = shapeOf(way, scale);
  const width = px(0.6 + 2 * weight);
  const ring = (n: number, dash: string) =>
    html`<ellipse rx="${px(n * along)}" ry="${px(n * across)}" fill="none" stroke="#000" stroke-width="${width}" stroke-dasharray="${dash}"/>`;
  return html`<g transform="translate(${px(x)} ${px(y)}) rotate(${px(-turn / DEGREE)})"><title>a* ${tint.a.toFixed(1)}, b* ${tint.b.toFixed(1)}</title>${ring(1, 'none')}${ring(2, '3 3')}<path d="M-4 0H4M0 -4V4" stroke="#000"/></g>`;
}

/** The number of a way on its outer ring, each way's on another side. */
function numbered(name: string, side: number, way: Way, { x, y }: Point, scale: number): Html {
  const { turn, along, across } = shapeOf(way, scale);
  const [u, v] = [2 * along * Math.cos(side), 2 * across * Math.sin(side)];
  const [dx, dy] = [u * Math.cos(turn) - v * Math.sin(turn), u * Math.sin(turn) + v * Math.cos(turn)];
  return html`<text x="${px(x + dx)}" y="${px(y - dy + 4)}" text-anchor="middle" class="small strong" stroke="#fff" stroke-width="3" paint-order="stroke">${name}</text>`;
}

/** One standard deviation under another light. */
function underLight(way: Way, { x, y }: Point, scale: number): Html {
  const { turn, along, across } = shapeOf(way, scale);
  return html`<ellipse transform="translate(${px(x)} ${px(y)}) rotate(${px(-turn / DEGREE)})" rx="${px(along)}" ry="${px(across)}" fill="none" stroke="#888" stroke-width="0.5"/><circle cx="${px(x)}" cy="${px(y)}" r="2.5" fill="#666"/>`;
}

/** Where the names of lights stand: round the middle, clear of the names of the axes. */
const NAMES = SIDE / 2 - 32;

/** Names of points that lie close together: round about, in the points' own order, each with a line to its point. */
function named(points: readonly (Point & { name: string })[]): Html[] {
  const centre = (key: 'x' | 'y') => points.reduce((sum, point) => sum + point[key] / points.length, 0);
  const [x0, y0] = [centre('x'), centre('y')];
  const sorted = points.toSorted((p, q) => Math.atan2(y0 - p.y, p.x - x0) - Math.atan2(y0 - q.y, q.x - x0));
  return sorted.map(({ name, x, y }, i) => {
    const angle = -Math.PI + 10 * DEGREE + (2 * Math.PI * i) / sorted.length;
    const [tx, ty] = [MIDDLE + NAMES * Math.cos(angle), MIDDLE - NAMES * Math.sin(angle)];
    return html`<path d="M${px(x)} ${px(y)}L${px(tx)} ${px(ty)}" stroke="#aaa" stroke-width="0.5"/><text x="${px(tx)}" y="${px(ty + 3)}" text-anchor="middle" font-size="9" fill="#444" stroke="#fff" stroke-width="3" paint-order="stroke">${name}</text>`;
  });
}

const DEGREE = Math.PI / 180;

/** One standard deviation along its own axes, and how far (radians, against the clock) the longer is turned. */
function shapeOf({ spread }: Way, scale: number) {
  const sd = wholeSpread(spread);
  const covariance = spread.corr * sd.a * sd.b;
  const turn = 0.5 * Math.atan2(2 * covariance, sd.a ** 2 - sd.b ** 2);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const along = Math.sqrt(Math.max(0, sd.a ** 2 * c * c + 2 * covariance * c * s + sd.b ** 2 * s * s));
  const across = Math.sqrt(Math.max(0, sd.a ** 2 * s * s - 2 * covariance * c * s + sd.b ** 2 * c * c));
  return { turn, along: along * scale, across: across * scale };
}

const px = (value: number) => Math.round(value * 100) / 100;

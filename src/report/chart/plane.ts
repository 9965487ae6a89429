// no-unit-test: part of a drawing that test/report/chart/index.test.ts reads whole
import type { AB, Forecast, RouteForecast } from '../../shared/forecast';
import { type Html, html } from '../page/html';

/** Size of the drawing in its own units. */
const SIDE = 300;
const MIDDLE = SIDE / 2;
/** The limits between neutral, faint, visible, obvious and heavy. */
const LIMITS = [1, 2, 4, 7];

/** Forecasts of one press: every route's ellipse under the first light, and where the other lights move the centre. */
export function plane(forecasts: readonly Forecast[]): Html {
  const [first, ...others] = forecasts;
  const ways = waysOf(first);
  const reach = reachOf([...ways, ...others.map(({ tint, spread }) => ({ tint, spread, weight: 1 }))]);
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
${ways.map(way => ellipse(way, at(way.tint), scale))}
${others.map(({ tint, condition }) => {
  const { x, y } = at(tint);
  return html`<circle cx="${px(x)}" cy="${px(y)}" r="2.5" fill="#000"><title>${condition.light}</title></circle>`;
})}
</svg>`;
}

type Way = Pick<RouteForecast, 'tint' | 'spread' | 'weight'>;

const waysOf = ({ routes, tint, spread }: Forecast): Way[] => routes ?? [{ tint, spread, weight: 1 }];

const deviation = ({ order, page }: Way['spread']): AB => ({
  a: Math.hypot(order.a, page.a),
  b: Math.hypot(order.b, page.b),
});

/** Half the width of the plane in CIELAB: all centres with two standard deviations, at least the band of 7. */
function reachOf(ways: readonly Way[]): number {
  const most = ways.map(({ tint, spread }) => {
    const sd = deviation(spread);
    return Math.max(Math.abs(tint.a) + 2 * sd.a, Math.abs(tint.b) + 2 * sd.b);
  });
  return Math.ceil(Math.max(8, ...most));
}

/** One and two standard deviations; heavier lines for what is likelier. */
function ellipse({ tint, spread, weight }: Way, { x, y }: { x: number; y: number }, scale: number): Html {
  const sd = deviation(spread);
  const covariance = spread.corr * sd.a * sd.b;
  const turn = 0.5 * Math.atan2(2 * covariance, sd.a ** 2 - sd.b ** 2);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const along = Math.sqrt(Math.max(0, sd.a ** 2 * c * c + 2 * covariance * c * s + sd.b ** 2 * s * s));
  const across = Math.sqrt(Math.max(0, sd.a ** 2 * s * s - 2 * covariance * c * s + sd.b ** 2 * c * c));
  const degrees = px((-turn * 180) / Math.PI);
  const width = px(0.6 + 2 * weight);
  const ring = (n: number, dash: string) =>
    html`<ellipse rx="${px(n * along * scale)}" ry="${px(n * across * scale)}" fill="none" stroke="#000" stroke-width="${width}" stroke-dasharray="${dash}"/>`;
  return html`<g transform="translate(${px(x)} ${px(y)}) rotate(${degrees})"><title>a* ${tint.a.toFixed(1)}, b* ${tint.b.toFixed(1)}</title>${ring(1, 'none')}${ring(2, '3 3')}<path d="M-4 0H4M0 -4V4" stroke="#000"/></g>`;
}

const px = (value: number) => Math.round(value * 100) / 100;

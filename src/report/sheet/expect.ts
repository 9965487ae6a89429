import { visibleShare } from '../../print/bands';
import { inOrders, percent } from '../../rules/words';
import type { AB, Bands, Forecast, Tint } from '../../shared/forecast';
import type { Condition } from '../../shared/sheet';

/** What a forecast is of, as far as its words depend on that. */
export interface Foretold {
  /** The picture has a tone of its own, so that a tint is no fault of the print. */
  toned?: boolean;
  /** It is one stated value, there is no picture. */
  stated?: boolean;
}

/** Below this a share of the picture is none. */
const SOME = 0.0005;

/** A forecast in sentences. */
export function expectations(forecast: Forecast, of: Foretold = {}): Condition['expect'] {
  const { tint, range } = forecast;
  if (isLineWork(forecast, of))
    return {
      tint: 'Black or white alone: no grey that could be tinted.',
      direction: '',
      range: `${endsOf(range)}.`,
    };
  return {
    tint: tintSentence(tint, of),
    direction: directionSentence(tint),
    range: `${endsOf(range)}; ${closing(range, of)}.`,
  };
}

/** Whether nothing of a picture is grey: then there are no odds of a tint, and no shades that could close up. */
export const isLineWork = ({ zones }: Forecast, { stated }: Foretold = {}): boolean =>
  !stated && zones.every(({ L }) => L < 1 || L > 99);

function tintSentence({ bands }: Tint, { toned }: Foretold): string {
  const seen = visibleShare(bands);
  if (toned) return `Its tone is seen ${inOrders(seen)}.`;
  const strong = bands.obvious + bands.heavy;
  const more = strong >= 0.1 ? `, an obvious one ${inOrders(strong)}` : '';
  return `A tint is seen ${inOrders(seen)}${more}.`;
}

function directionSentence({ direction, directionProbability }: Tint): string {
  if (direction === null) return 'No predictable direction.';
  return `It leans ${direction} ${inOrders(directionProbability)}.`;
}

const endsOf = ({ black, white }: Forecast['range']) =>
  `Black comes out at L* ${black.toFixed(0)} on a paper of ${white.toFixed(0)}`;

/** What is lost in black; the file's own black is no loss of the print. */
function closing({ blockedShare, closedShare }: Forecast['range'], { stated }: Foretold): string {
  if (stated) return blockedShare >= SOME ? 'this value prints as black' : 'this value is told from it';
  return closedShare >= SOME
    ? `shades on ${percent(closedShare)} of the picture close up in it`
    : 'no shade of the picture closes up in it';
}

/** A forecast in numbers: the same labels in the same order for every forecast. */
export function figuresOf(forecast: Forecast, of: Foretold = {}): Condition['figures'] {
  const { tint, absolute, spread, parts, range, condition } = forecast;
  const ends: Condition['figures'] = [
    ['Black, paper, L*', `${range.black.toFixed(0)}, ${range.white.toFixed(0)}`],
  ];
  const numbers: Condition['figures'] = [['The file’s numbers are', routes[condition.route]]];
  if (isLineWork(forecast, of)) return [...ends, ...numbers];
  const [neutral, faint, visible, obvious, heavy] = inTenths(tint.bands);
  return [
    ['No tint (below 1)', neutral],
    ['Faint, beside a neutral only (1–2)', faint],
    ['Visible (2–4)', visible],
    ['Obvious (4–7)', obvious],
    ['Heavy (above 7)', heavy],
    ['Direction', tint.direction ?? 'no predictable direction'],
    ['Tint at the centre, a* / b*', point(tint)],
    ['  from the process', point(parts.process)],
    ['  from this encoding', point(parts.encoding)],
    ['  from the light', point(parts.light)],
    ['Aim of the paper, a* / b*', point(parts.paper)],
    ['Beside a pure white page, a* / b*', point(absolute)],
    ['One order from the next, ± a* / b*', spreadOf(spread.order)],
    ['One page from the next, ± a* / b*', spreadOf(spread.page)],
    ...ends,
    ...blackFigures(range, of),
    ...numbers,
  ];
}

function blackFigures(
  { blockedShare, closedShare }: Forecast['range'],
  { stated }: Foretold,
): Condition['figures'] {
  if (stated) return [['Prints as black', blockedShare > 0 ? 'yes' : 'no']];
  return [
    ['Prints as black', shareFigure(blockedShare)],
    ['  of it shades of the file', shareFigure(closedShare)],
  ];
}

const shareFigure = (share: number) => (share === 0 ? 'nothing' : percent(share));

const routes: Record<Forecast['condition']['route'], string> = {
  rgb: 'printed as RGB',
  separated: 'separated to inks',
  inks: 'kept as inks',
  'black-plate': 'put on the black plate',
  unknown: 'handled in a way not known: several mixed',
};

/**
 * Bands as whole orders of ten that add up to ten (largest remainder: what is cut off first goes to those that lose
 * most by it).
 */
function inTenths({ neutral, faint, visible, obvious, heavy }: Bands): string[] {
  const shares = [neutral, faint, visible, obvious, heavy];
  const whole = shares.map(share => Math.floor(share * 10));
  const byRemainder = shares
    .map((share, at) => ({ at, rest: share * 10 - whole[at] }))
    .sort((x, y) => y.rest - x.rest);
  const left = Math.max(0, 10 - whole.reduce((sum, n) => sum + n, 0));
  for (const { at } of byRemainder.slice(0, left)) whole[at]++;
  return whole.map((orders, at) => tenths(orders, shares[at]));
}

function tenths(orders: number, probability: number): string {
  if (orders >= 10) return 'nearly every order';
  if (orders > 0) return `about ${orders} in 10`;
  if (probability < 0.005) return '–';
  return probability < 0.05 ? 'fewer than 1 in 20' : 'fewer than 1 in 10';
}

const point = ({ a, b }: AB) => `${signed(a)} / ${signed(b)}`;
const spreadOf = ({ a, b }: AB) => `${a.toFixed(1)} / ${b.toFixed(1)}`;

export function signed(value: number): string {
  const text = Math.abs(value).toFixed(1);
  if (Number(text) === 0) return '0.0';
  return value > 0 ? `+${text}` : `−${text}`;
}

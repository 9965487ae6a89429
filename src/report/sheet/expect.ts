import { leanOf } from '../../print/lean';
import { LOST } from '../../print/range';
import { blackWords, isOpen } from '../../rules/black';
import { inOrders, leanName, percent } from '../../rules/words';
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
  const { range } = forecast;
  const white = range.white.toFixed(0);
  if (isLineWork(forecast, of))
    return {
      tint: 'Black or white alone: no grey that could be tinted.',
      direction: '',
      range: `Black comes out at L* ${blackWords(range)} on a paper of ${white}.`,
    };
  return {
    tint: tintSentence(forecast.tint, of),
    direction: directionSentence(forecast),
    range: `The deepest black of this encoding comes out at L* ${blackWords(range)}${byWay(range)} on a paper of ${white}; ${darkest(forecast, of)}${closing(range, of)}.`,
  };
}

/** Whether nothing of a picture is grey: then there are no odds of a tint, and no shades that could close up. */
export const isLineWork = ({ zones }: Forecast, { stated }: Foretold = {}): boolean =>
  !stated && zones.every(({ L }) => L < 1 || L > 99);

function tintSentence({ seen, seenObvious }: Tint, { toned }: Foretold): string {
  if (toned) return `Its tone is seen ${inOrders(seen)}.`;
  const more = seenObvious >= 0.1 ? `, an obvious one ${inOrders(seenObvious)}` : '';
  return `A tint is seen ${inOrders(seen)}${more}.`;
}

/** The direction counts tints from 1 up, the sentence before it those from 2 up. */
function directionSentence(forecast: Forecast): string {
  const lean = leanOn(forecast);
  if (!lean) return 'No predictable direction.';
  return `Faint tints counted too, it leans ${leanName(lean)} ${inOrders(lean.probability)}.`;
}

const leanOn = (forecast: Forecast) => (forecast.tint.direction === null ? null : leanOf([forecast]));

/** The direction in a word or two. */
export function directionWords(forecast: Forecast): string | null {
  const lean = leanOn(forecast);
  return lean && leanName(lean);
}

const byWay = (range: Forecast['range']) => (isOpen(range) ? ', by what the house does with it,' : '');

/** The picture's own darkest tones, where the encoding's black is deeper than they print. */
function darkest({ zones, range }: Forecast, { stated }: Foretold): string {
  const own = Math.min(...zones.map(({ Lprint }) => Lprint));
  return stated || own < range.blackWeakest + LOST
    ? ''
    : `the darkest zone of the picture at about ${own.toFixed(0)}; `;
}

/** What is lost in black; the file's own black is no loss of the print. */
function closing({ blockedShare, closedShare }: Forecast['range'], { stated }: Foretold): string {
  if (stated) return blockedShare >= SOME ? 'this value prints as black' : 'this value is told from black';
  return closedShare >= SOME
    ? `shades on ${percent(closedShare)} of the picture close up`
    : 'no shade of the picture closes up';
}

/** A forecast in numbers: the same labels in the same order for every forecast. */
export function figuresOf(forecast: Forecast, of: Foretold = {}): Condition['figures'] {
  const { tint, absolute, spread, parts, range, condition } = forecast;
  const ends: Condition['figures'] = [
    ["Encoding's black, paper, L*", `${blackWords(range)}, ${range.white.toFixed(0)}`],
  ];
  const numbers: Condition['figures'] = [["The file's numbers are", routes[condition.route]]];
  if (isLineWork(forecast, of)) return [...ends, ...numbers];
  return [
    ...sizesOf(tint, of),
    ['Direction', directionWords(forecast) ?? 'no predictable direction'],
    ['Tint at the centre, a* / b*', point(tint)],
    ['  from the process', point(parts.process)],
    ['  from this encoding', point(parts.encoding)],
    ['  from the light', point(parts.light)],
    ['Aim of the paper, a* / b*', point(parts.paper)],
    ['Beside a pure white page, a* / b*', point(absolute)],
    ['One page from the next, ± a* / b*', spreadOf(spread.page)],
    ['One order from the next, ± a* / b*', spreadOf(spread.order)],
    ['Between houses or unknown, ± a* / b*', spreadOf(spread.house)],
    ...ends,
    ...blackFigures(range, of),
    ...numbers,
  ];
}

/**
 * How large a tint is: of a stated value in orders of ten; of a picture in how many orders it is seen, and, which is
 * another thing, on how much of what is printed in all of them.
 */
export function sizesOf(tint: Tint, { stated }: Foretold = {}): Condition['figures'] {
  const words = stated ? inOrdersOfTen : inShares;
  const [neutral, faint, visible, obvious, heavy] = tenthsOf(tint.bands, words);
  const sizes: Condition['figures'] = [
    ['No tint (below 1)', neutral],
    ['Faint, beside a neutral only (1–2)', faint],
    ['Visible (2–4)', visible],
    ['Obvious (4–7)', obvious],
    ['Heavy (above 7)', heavy],
  ];
  if (stated) return sizes;
  return [
    ['Orders in which a tint is seen', inOrdersOfTen(Math.round(10 * tint.seen), tint.seen)],
    ['  an obvious one', inOrdersOfTen(Math.round(10 * tint.seenObvious), tint.seenObvious)],
    ['Of all that they print:', ''],
    ...sizes.map(([label, value]): [string, string] => [
      `  ${label[0].toLowerCase()}${label.slice(1)}`,
      value,
    ]),
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
 * Bands as whole tenths that add up to ten (largest remainder: what is cut off first goes to those that lose most by
 * it), in words.
 */
function tenthsOf(bands: Bands, words: (tenths: number, share: number) => string): string[] {
  const { neutral, faint, visible, obvious, heavy } = bands;
  const shares = [neutral, faint, visible, obvious, heavy];
  const whole = shares.map(share => Math.floor(share * 10));
  const byRemainder = shares
    .map((share, at) => ({ at, rest: share * 10 - whole[at] }))
    .sort((x, y) => y.rest - x.rest);
  const left = Math.max(0, 10 - whole.reduce((sum, n) => sum + n, 0));
  for (const { at } of byRemainder.slice(0, left)) whole[at]++;
  return whole.map((tenths, at) => words(tenths, shares[at]));
}

function inOrdersOfTen(tenths: number, probability: number): string {
  if (tenths >= 10) return 'nearly every order';
  if (tenths > 0) return `about ${tenths} in 10`;
  if (probability < 0.005) return '–';
  return probability < 0.05 ? 'fewer than 1 in 20' : 'fewer than 1 in 10';
}

function inShares(tenths: number, share: number): string {
  if (tenths >= 10) return 'nearly all';
  if (tenths > 0) return `about ${10 * tenths} %`;
  if (share < 0.005) return '–';
  return share < 0.05 ? 'less than 5 %' : 'less than 10 %';
}

const point = ({ a, b }: AB) => `${signed(a)} / ${signed(b)}`;
const spreadOf = ({ a, b }: AB) => `${a.toFixed(1)} / ${b.toFixed(1)}`;

export function signed(value: number): string {
  const text = Math.abs(value).toFixed(1);
  if (Number(text) === 0) return '0.0';
  return value > 0 ? `+${text}` : `−${text}`;
}

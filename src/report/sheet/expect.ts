import { visibleShare } from '../../print/bands';
import { inOrders, percent } from '../../rules/words';
import type { AB, Forecast, Tint } from '../../shared/forecast';
import type { Condition } from '../../shared/sheet';

/** A forecast in sentences. `toned`: the picture has a tone of its own, so that a tint is no fault of the print. */
export function expectations({ tint, range }: Forecast, toned = false): Condition['expect'] {
  return { tint: tintSentence(tint, toned), direction: directionSentence(tint), range: rangeSentence(range) };
}

function tintSentence({ bands }: Tint, toned: boolean): string {
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

function rangeSentence({ black, white, blockedShare }: Forecast['range']): string {
  const lost =
    blockedShare >= 0.0005
      ? `${percent(blockedShare)} of the picture is lost in it`
      : 'nothing is lost in it';
  return `Black comes out at L* ${black.toFixed(0)} on a paper of ${white.toFixed(0)}; ${lost}.`;
}

/** A forecast in numbers: the same labels in the same order for every forecast. */
export function figuresOf(forecast: Forecast): Condition['figures'] {
  const { tint, absolute, spread, parts, range, condition } = forecast;
  const { bands } = tint;
  return [
    ['No tint (below 1)', tenths(bands.neutral)],
    ['Faint, beside a neutral only (1–2)', tenths(bands.faint)],
    ['Visible (2–4)', tenths(bands.visible)],
    ['Obvious (4–7)', tenths(bands.obvious)],
    ['Heavy (above 7)', tenths(bands.heavy)],
    ['Direction', tint.direction ?? 'no predictable direction'],
    ['Tint at the centre, a* / b*', point(tint)],
    ['… from the process', point(parts.process)],
    ['… from this encoding', point(parts.encoding)],
    ['… from the light', point(parts.light)],
    ['Aim of the paper, a* / b*', point(parts.paper)],
    ['Beside another paper, a* / b*', point(absolute)],
    ['One order from the next, ± a* / b*', spreadOf(spread.order)],
    ['One page from the next, ± a* / b*', spreadOf(spread.page)],
    ['Black, paper, L*', `${range.black.toFixed(0)}, ${range.white.toFixed(0)}`],
    ['Lost in black', range.blockedShare > 0 ? percent(range.blockedShare) : 'nothing'],
    ['The file’s numbers are', routes[condition.route]],
  ];
}

const routes: Record<Forecast['condition']['route'], string> = {
  rgb: 'printed as RGB',
  separated: 'separated to inks',
  inks: 'kept as inks',
  'black-plate': 'put on the black plate',
  unknown: 'handled in a way not known: several mixed',
};

/** A probability as a share of ten orders: whole orders only. */
function tenths(probability: number): string {
  if (probability < 0.005) return '–';
  if (probability < 0.05) return 'fewer than 1 in 20';
  return `about ${Math.round(probability * 10) || 1} in 10`;
}

const point = ({ a, b }: AB) => `${signed(a)} / ${signed(b)}`;
const spreadOf = ({ a, b }: AB) => `${a.toFixed(1)} / ${b.toFixed(1)}`;

export function signed(value: number): string {
  const text = Math.abs(value).toFixed(1);
  if (Number(text) === 0) return '0.0';
  return value > 0 ? `+${text}` : `−${text}`;
}

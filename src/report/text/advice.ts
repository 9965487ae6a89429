import { type EncodingAdvice, papers, processes } from '../../print';
import { blackWords } from '../../rules/black';
import { paintOf, type Style } from './style';
import { columns, indent, wrap } from './wrap';

const INTRODUCTION = [
  'What to do with a sound grey picture in each encoding, by process and paper: route unknown, D50, default settings. Every row is for a book all of whose pictures are stored so. Computed from the forecasts.',
  '"Even" counts the orders of 10 that are expected without a tint seen by itself (dCh of 2 on a quarter of the picture), in brackets from the worst to the best that a print house may do with such a file; how much one order differs from the next, which it rests on, is a guess in every line. Black is the deepest that the encoding prints; where it depends on what the house does, from the deepest to the weakest. The last column says what the tint itself rests on.',
  'Convert where another encoding that houses usually take is even in 2 orders more (before rounding), and inks always where R, G, B are printed; ask where worst and best, as they are shown (9+ counts as 10), are more than 4 apart, however good the mean; otherwise it can be sent. "None clearly evener" says the same of what is even in fewer than 7 orders: no other gains enough to be sure of it, and nothing in the file is wrong.',
  "Every line is generic: it speaks of a kind of process, not of your printer. The print house's own advice goes first, and a test print comes before the run.",
];

/** The table of advice for people: a press a block, an encoding a row. */
export function adviceText(lines: readonly EncodingAdvice[], style: Style): string {
  const presses = [...new Set(lines.map(pressOf))];
  const blocks = presses.map(press =>
    blockOf(
      lines.filter(line => pressOf(line) === press),
      style,
    ),
  );
  const introduction = INTRODUCTION.map(paragraph => wrap(paragraph, style.width).join('\n'));
  return `${[...introduction, ...blocks].join('\n\n')}\n`;
}

const nameIn = (list: readonly { id: string; name: string }[], id: string) =>
  list.find(entry => entry.id === id)!.name;

const pressOf = ({ process, paper }: EncodingAdvice) => `${process} ${paper}`;

function blockOf(lines: readonly EncodingAdvice[], style: Style): string {
  const [{ process, paper }] = lines;
  const head = ['', 'what to do', 'even', 'black L*', 'tint'];
  const rows = lines.map(line => [line.encoding, actOf(line), evenOf(line), blackWords(line), line.ground]);
  return [
    ...wrap(`${nameIn(processes, process)}; ${nameIn(papers, paper)}`, style.width, 2).map(
      paintOf(style).bold,
    ),
    ...indent(columns([head, ...rows], [3]), 2),
  ].join('\n');
}

/** What to do with a file in this encoding. */
export function actOf({ verdict, better, evenOrders }: EncodingAdvice): string {
  if (verdict === 'convert') return `convert to ${better}`;
  if (verdict === 'ask') return 'ask the print house';
  return Math.round(evenOrders) >= OFTEN_EVEN ? 'can be sent' : 'none clearly evener';
}

/** From so many even orders of 10 on nothing has to be said against sending. Own choice. */
const OFTEN_EVEN = 7;

/** Orders of 10 in words. Never ten of ten: no forecast is that sure. */
export const inTen = (orders: number) => (orders > 9.5 ? '9+' : orders.toFixed(0));

/** Orders of 10 without a visible tint, in brackets from the worst to the best way of the house. */
export function evenOf({ evenOrders, evenOrdersWorst, evenOrdersBest }: EncodingAdvice): string {
  const [even, worst, best] = [evenOrders, evenOrdersWorst, evenOrdersBest].map(inTen);
  return worst === best ? even : `${even} (${worst} to ${best})`;
}

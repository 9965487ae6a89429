import type { Lean } from '../print/lean';
import type { Encoding } from '../shared/picture';

/** Encodings as a sentence names them. The id stays visible: it is what the settings and the reports use. */
const meanings: Record<Encoding, string> = {
  'single-channel': 'one grey channel',
  'rgb-neutral': 'RGB with R = G = B',
  'rgb-residual': 'RGB grey with left-over colour',
  'rgb-toned': 'RGB with a tone of its own',
  'black-only': 'black ink alone',
  'four-channel': 'grey of four inks',
  'three-ink': 'grey of three inks without black',
  bilevel: 'one bit, black or white',
  'lab-neutral': 'Lab without colour',
  colour: 'colour',
  unreadable: 'could not be read',
};

/** An encoding in a few words, without its id. */
export const meaningOf = (encoding: Encoding): string => meanings[encoding];

/** `black-only (black ink alone)`. */
export function encodingName(encoding: Encoding): string {
  return encoding === 'colour' || encoding === 'unreadable'
    ? meanings[encoding]
    : `${encoding} (${meanings[encoding]})`;
}

/** A probability as people count it: by orders, never with more digits than it deserves. */
export function inOrders(probability: number): string {
  const tenths = tenthsOf(probability);
  if (tenths <= 0) return 'in fewer than 1 order of 20';
  if (tenths >= 10) return 'in nearly every order';
  return `in about ${tenths} ${tenths === 1 ? 'order' : 'orders'} of 10`;
}

/** The same of several pictures: their mean, and how far they differ where that can be told. */
export function inOrdersOfMany(probabilities: readonly number[]): string {
  const mean = probabilities.reduce((sum, probability) => sum + probability, 0) / probabilities.length;
  const [least, most] = [Math.min(...probabilities), Math.max(...probabilities)].map(tenthsOf);
  if (least === most) return inOrders(mean);
  const from = least === 0 ? 'fewer than 1' : least;
  const to = most === 10 ? 'nearly every one' : most;
  return `on average ${inOrders(mean)} (from ${from} to ${to}, by picture)`;
}

const tenthsOf = (probability: number) => Math.round(probability * 10);

/** `pinkish`, and near the boundary of two names `pinkish to warm`. */
export const leanName = ({ direction, also }: Lean): string => (also ? `${direction} to ${also}` : direction);

/** How sure a direction is that is foretold at all: before its name. */
export function mostly({ probability }: Lean): string {
  if (probability >= 0.95) return 'nearly always';
  return probability >= 0.75 ? 'mostly' : 'more often than not';
}

/** `, mostly warm,` after what leans; nothing where no direction can be foretold. */
export const leaning = (way: Lean | null): string => (way ? `, ${mostly(way)} ${leanName(way)},` : '');

/** `1 picture`, `12 pictures`. */
export function count(n: number, noun: string): string {
  return `${n} ${noun}${n === 1 ? '' : 's'}`;
}

/** `a.tif, b.tif, c.tif and 9 more`. */
export function list(names: readonly string[], most = 3): string {
  const shown = names.slice(0, most);
  const more = names.length - shown.length;
  if (more > 0) return `${shown.join(', ')} and ${more} more`;
  return shown.length < 2 ? shown.join('') : `${shown.slice(0, -1).join(', ')} and ${shown.at(-1)}`;
}

/** A share of the area, 0-1, in whole per cent; never "0 %" for what is there. */
export function percent(share: number): string {
  if (share > 0 && share < 0.005) return 'less than 1 %';
  return `${Math.round(share * 100)} %`;
}

/** A length in print: whole millimetres, tenths below 3. */
export function millimetres(mm: number): string {
  if (mm < 0.1) return 'less than 0.1 mm';
  return `${mm < 3 ? mm.toFixed(1) : Math.round(mm)} mm`;
}

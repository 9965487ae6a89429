// no-unit-test: part of a page that test/report/page/sheet.test.ts reads whole
import { type Html, html } from './html';

/** How many possible orders are drawn: as many as people count probabilities in. */
export const ORDERS = 10;

export const orderId = (order: number) => `order-${order}`;

export const waysSeen = ['alone', 'beside'] as const;
type WaySeen = (typeof waysSeen)[number];

/** What the choice says; a page in another language brings its own. */
export interface OrderWords extends Record<WaySeen, string> {
  order: string;
  drawn: string;
}

const orderWords: OrderWords = {
  order: 'Possible order',
  drawn: 'Drawn',
  alone: 'as eyes used to this paper see it',
  beside: 'as it looks beside a pure white page',
};

/** What the strips of a page show; the page starts with these. */
export interface Shown {
  /** From 0. */
  order: number;
  seen: WaySeen;
}

/**
 * Which possible order is drawn long, and how all are seen. Radio buttons, so that it works by keyboard and without any
 * script: the style sheet shows what belongs to those that are checked, all over the page.
 */
export function orderChoice({ order, seen }: Shown, words = orderWords): Html {
  return html`
${choice(
  'order',
  words.order,
  Array.from({ length: ORDERS }, (_, i) => ({
    id: orderId(i),
    value: i,
    words: i + 1,
    checked: i === order,
  })),
)}
${choice(
  'seen',
  words.drawn,
  waysSeen.map(way => ({ id: `seen-${way}`, value: way, words: words[way], checked: way === seen })),
)}`;
}

interface Option {
  id: string;
  value: string | number;
  words: string | number | Html;
  checked: boolean;
}

/** One of several, by radio buttons: the style sheet goes by the one that is checked. */
export const choice = (name: string, legend: string, options: readonly Option[]): Html => html`
<fieldset class="choice" data-choice="${name}">
  <legend>${legend}</legend>
  ${options.map(
    ({ id, value, words, checked }) =>
      html`<input type="radio" name="${name}" id="${id}" value="${value}"${checked && html` checked`}/><label for="${id}">${words}</label>`,
  )}
</fieldset>`;

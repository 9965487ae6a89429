import { type Html, html } from './html';

/** How many possible orders are drawn: as many as people count probabilities in. */
export const ORDERS = 10;

export const orderId = (order: number) => `order-${order}`;

/**
 * Which possible order the strips show. Radio buttons, so that it works by keyboard and without any script: the style
 * sheet shows what belongs to the one that is checked, all over the page.
 */
export function orderChoice(checked = 0): Html {
  return html`
<fieldset class="orders">
  <legend>Possible order</legend>
  ${Array.from({ length: ORDERS }, (_, i) => {
    const id = orderId(i);
    return html`<input type="radio" name="order" id="${id}" value="${i}"${i === checked && html` checked`}/><label for="${id}">${i + 1}</label>`;
  })}
</fieldset>`;
}

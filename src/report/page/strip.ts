// no-unit-test: part of a page that test/report/page/sheet.test.ts reads whole
import type { PossibleOrder } from '../../shared/sheet';
import { type Html, html } from './html';
import { waysSeen } from './orders';

/** Where in a sheet's scale the grey of the small patches lies: light enough for a tint to be seen. */
export const LIGHT_GREY = 9;

/**
 * Greys from paper to black as flush patches, lying or standing. Drawn with `fill`: a strict security policy lets no
 * `style` through. Each patch reaches under the next, or the ground shines through between them.
 */
export function strip(kind: string, colours: readonly string[], standing = false): Html {
  const n = colours.length;
  const patches = colours.map((colour, i) => [
    html`<path fill="${colour}" d="${standing ? `M0 ${i}h1v2h-1z` : `M${i} 0h2v1h-2z`}"/>`,
  ]);
  return html`<svg class="${kind}" viewBox="${standing ? `0 0 1 ${n}` : `0 0 ${n} 1`}" preserveAspectRatio="none" aria-hidden="true">${patches}</svg>`;
}

/** Every other grey: a column is too narrow to show more. */
export const half = (colours: readonly string[]) => colours.filter((_, i) => i % 2 === 0);

/** One light grey in each of the possible orders, flush: neighbours show each other's tint. Both ways of seeing it. */
export const lightGreys = (orders: readonly PossibleOrder[]): Html =>
  html`${waysSeen.map(
    seen =>
      html`<div class="way" data-seen="${seen}">${strip(
        'ten-greys',
        orders.map(order => order[seen][LIGHT_GREY]),
      )}</div>`,
  )}`;

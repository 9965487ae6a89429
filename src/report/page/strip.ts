// no-unit-test: part of a page that test/report/page/sheet.test.ts reads whole
import type { PossibleOrder, Sheet } from '../../shared/sheet';
import { type Html, html } from './html';

/** Where in a sheet's scale the grey of the ten small patches lies: light enough for a tint to be seen. */
const LIGHT_GREY = 9;

/**
 * Greys from paper to black as flush patches: the file's in a narrow band above, the print's in a broad one below.
 * They share an edge, since the eye sees a tint best there. Drawn with `fill`: a strict security policy lets no
 * `style` through.
 */
export function strip(scale: Sheet['scale'], print: readonly string[]): Html {
  const n = scale.colours.length;
  return html`<svg class="strip" viewBox="0 0 ${n} 10" preserveAspectRatio="none" aria-hidden="true">${[
    row(scale.colours, 0, 3),
    row(print, 3, 7),
  ]}</svg>`;
}

/** Patches overlap by a hair, or the ground shines through between them. */
const row = (colours: readonly string[], y: number, height: number) =>
  colours.map(
    (colour, i) =>
      html`<rect x="${i}" y="${y}" width="${i === colours.length - 1 ? 1 : 1.05}" height="${height}" fill="${colour}"/>`,
  );

/** The same light grey of the file in each of the possible orders, flush. */
export function patch(order: PossibleOrder, seen: keyof PossibleOrder): Html {
  return html`<svg class="patch" data-seen="${seen}" viewBox="0 0 1 1" preserveAspectRatio="none" aria-hidden="true"><rect width="1" height="1" fill="${order[seen][LIGHT_GREY]}"/></svg>`;
}

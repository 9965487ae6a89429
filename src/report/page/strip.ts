import type { PossibleOrder, Sheet } from '../../shared/sheet';
import { type Html, html } from './html';

/**
 * Greys from paper to black as flush patches: the file's in a narrow band above, the print's in a broad one below.
 * They share an edge, since the eye sees a tint best there. A drawing, `fill` and all: a strict security policy lets
 * no `style` through.
 */
export function strip(scale: Sheet['scale'], order: PossibleOrder, label: string): Html {
  const n = scale.colours.length;
  // patches overlap by a hair, or the ground shines through between them
  const patch = (colour: string, i: number, y: number, height: number) =>
    html`<rect x="${i}" y="${y}" width="${i === n - 1 ? 1 : 1.05}" height="${height}" fill="${colour}"/>`;
  return html`<svg class="strip" viewBox="0 0 ${n} 10" preserveAspectRatio="none" role="img" aria-label="${label}">
${scale.colours.map((colour, i) => patch(colour, i, 0, 3))}${order.scale.map((colour, i) => patch(colour, i, 3, 7))}
</svg>`;
}

/** A patch of the middle grey of one possible order. */
export function chip(order: PossibleOrder): Html {
  return html`<svg class="chip" viewBox="0 0 1 1" preserveAspectRatio="none" aria-hidden="true"><rect width="1" height="1" fill="${order.middle}"/></svg>`;
}

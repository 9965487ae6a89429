// no-unit-test: test/report/compare/page.test.ts reads what comes of it
import { type Html, html } from '../page/html';
import { type Image, image } from '../page/image';
import { sameShape } from '../page/same-shape';

/** A picture made small, or why it cannot be shown; null: there is none. */
export type Shown = Image | { trouble: string } | null;

/** Moves the edge between two pictures: before lies left of it, after right. Without it they stand side by side. */
export const WIPE =
  "document.documentElement.classList.add('wiped');for(const s of document.querySelectorAll('.slider input'))s.addEventListener('input',()=>s.closest('.wipe').style.setProperty('--at',s.value+'%'));";

/** CSS pixels: no picture that the page carries is wider. */
const WIDEST = 960;

/** Both at one size, to be wiped over each other; side by side where their shapes differ; or the one that there is. */
export function sides(before: Shown, after: Shown, name: string): Html {
  if (isImage(before) && isImage(after) && sameShape(before, after)) return wipe(before, after, name);
  if (!before && !after) return html``;
  return html`<div class="sides">${before && plate(before, 'Before', name)}${after && plate(after, before ? 'After' : 'Now', name)}</div>`;
}

function wipe(before: Image, after: Image, name: string): Html {
  const shape = (before.fullWidth / before.fullHeight).toFixed(4);
  const widest = Math.min(Math.max(before.fullWidth, after.fullWidth), WIDEST);
  return html`
  <div class="sides wipe" style="--shape: ${shape}; --widest: ${widest}px">
    <div class="over">${plate(before, 'Before', name)}${plate(after, 'After', name)}</div>
    <div class="slider"><input type="range" min="0" max="100" value="50" aria-label="How much of the width shows the picture before, in percent: ${name}"/></div>
  </div>`;
}

const isImage = (shown: Shown): shown is Image => shown !== null && !('trouble' in shown);

const plate = (shown: NonNullable<Shown>, when: string, name: string): Html =>
  html`<figure>${isImage(shown) ? image(shown, `${name}, ${when.toLowerCase()}`) : html`<p>${shown.trouble}</p>`}<figcaption>${when}</figcaption></figure>`;

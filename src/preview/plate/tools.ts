// no-unit-test: it lives in a webview; test/e2e/suites/screen tests it there
import { t } from '@vscode/l10n';
import { type Html, html } from '../../report/page/html';
import type { Overlay, OverlayId } from '../../report/page/overlays';
import type { Marks } from '../../shared/look';
import type { Sheet } from '../../shared/sheet';
import { filled } from '../sentence';

/** CSS pixels of the line that a person lays a ruler on. */
export const RULER = 400;

export const zoomTools = (): Html => html`
<div class="plate-tools" role="group" aria-label="${t('Size')}">
  <button type="button" class="plain" id="zoom-whole" aria-pressed="true">${t('All of it')}</button>
  <button type="button" class="plain" id="zoom-one" aria-pressed="false">1:1</button>
  <button type="button" class="plain" id="zoom-printed" aria-pressed="false">${t('Printed size')}</button>
  <button type="button" class="plain" id="zoom-out" aria-label="${t('Smaller')}">−</button>
  <button type="button" class="plain" id="zoom-in" aria-label="${t('Larger')}">+</button>
  <output id="zoom-told"></output>
</div>
<div id="printed" hidden>
  <p id="printed-told"></p>
  <details id="measure"><summary>${t('Measure this screen')}</summary>
    <svg class="ruler" width="${RULER}" height="12" viewBox="0 0 ${RULER} 12" aria-hidden="true"><path d="M.5 0v12M0 6h${RULER}M${RULER - 0.5} 0v12"/></svg>
    <p><label>${filled(t('Lay a ruler on the line. It is {0} mm long.'), html`<input id="ruler-mm" type="number" min="20" max="500" step="0.5" size="6"/>`)}</label> <button type="button" class="plain" id="ruler-use">${t('Use that')}</button> <span id="ruler-told" role="status"></span></p>
  </details>
</div>
<p class="reading"><output id="reading"></output></p>`;

/** What can be marked, ticked where it is; on which print, where that makes a difference and there are several. */
export function markTools(
  overlays: readonly Overlay[],
  marked: readonly OverlayId[],
  { conditions }: Sheet,
  condition: number,
): Html {
  const several = conditions.length > 1 && marked.some(id => id === 'shadows' || id === 'ink');
  return html`
<fieldset class="marks"><legend>${t('Mark')}</legend>
  ${overlays.map(
    ({ id, name }) =>
      html`<span><input type="checkbox" id="mark-${id}" data-mark="${id}"${marked.includes(id) && html` checked`}/><label lang="en" for="mark-${id}"><canvas class="swatch" width="16" height="16" data-swatch="${id}" aria-hidden="true"></canvas>${name}</label></span> `,
  )}
  ${several && html`<label>${filled(t('on {0}'), html`<select id="mark-on" lang="en">${conditions.map(({ process, paper }, i) => html`<option value="${i}"${i === condition && html` selected`}>${process}, ${paper}</option>`)}</select>`)}</label>`}
</fieldset>`;
}

/** Below: how much each of them is; told to those who do not see it too. */
export const markWords = (chosen: readonly Overlay[], { shares }: Marks): Html =>
  html`${chosen.map(overlay => html`<p lang="en">${overlay.told(shares)}</p>`)}`;

export const measuring = (): Html =>
  html`<p>${t('Every stored value of the picture is being looked at.')}</p>`;

export const keyHelp = (): Html => html`
<details class="keys"><summary>${t('Keys and pointer')}</summary>
  <dl>${keys().map(
    ([key, does]) => html`
    <div><dt>${key}</dt><dd>${does}</dd></div>`,
  )}
  </dl>
</details>`;

const keys = (): [key: string, does: string][] => [
  ['+ −', t('larger, smaller; also Ctrl and the wheel, a pinch, a double click')],
  ['0', t('all of it')],
  ['1', t('one pixel of the picture on one of the screen')],
  ['P', t('printed size')],
  [t('Arrows'), t('move the picture; also drag, or the wheel once it was clicked')],
  [t('Shift, arrows'), t('move the reading point, whose stored values are told')],
  [t('Page Up, Down'), t('the picture before, the picture after it in the book')],
];

// no-unit-test: it lives in a webview; test/e2e/suites/screen tests it there
import { type Html, html } from '../../report/page/html';
import type { Overlay, OverlayId } from '../../report/page/overlays';
import type { Sheet } from '../../shared/sheet';

/** CSS pixels of the line that a person lays a ruler on. */
export const RULER = 400;

export const zoomTools = html`
<div class="plate-tools" role="group" aria-label="Size">
  <button type="button" class="plain" id="zoom-whole" aria-pressed="true">All of it</button>
  <button type="button" class="plain" id="zoom-one" aria-pressed="false">1:1</button>
  <button type="button" class="plain" id="zoom-printed" aria-pressed="false">Printed size</button>
  <button type="button" class="plain" id="zoom-out" aria-label="Smaller">−</button>
  <button type="button" class="plain" id="zoom-in" aria-label="Larger">+</button>
  <output id="zoom-told"></output>
</div>
<div id="printed" hidden>
  <p id="printed-told"></p>
  <details id="measure"><summary>Measure this screen</summary>
    <svg class="ruler" width="${RULER}" height="12" viewBox="0 0 ${RULER} 12" aria-hidden="true"><path d="M.5 0v12M0 6h${RULER}M${RULER - 0.5} 0v12"/></svg>
    <p><label for="ruler-mm">Lay a ruler on the line. It is</label> <input id="ruler-mm" type="number" min="20" max="500" step="0.5" size="6"/> mm long. <button type="button" class="plain" id="ruler-use">Use that</button> <span id="ruler-told" role="status"></span></p>
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
<fieldset class="marks"><legend>Mark</legend>
  ${overlays.map(
    ({ id, name }) =>
      html`<span><input type="checkbox" id="mark-${id}" data-mark="${id}"${marked.includes(id) && html` checked`}/><label for="mark-${id}"><canvas class="swatch" width="16" height="16" data-swatch="${id}" aria-hidden="true"></canvas>${name}</label></span> `,
  )}
  ${several && html`<label>on <select id="mark-on">${conditions.map(({ process, paper }, i) => html`<option value="${i}"${i === condition && html` selected`}>${process}, ${paper}</option>`)}</select></label>`}
</fieldset>`;
}

/** Below: how much each of them is; told to those who do not see it too. */
export const markWords = (lines: readonly string[]): Html => html`${lines.map(line => html`<p>${line}</p>`)}`;

export const keyHelp = html`
<details class="keys"><summary>Keys and pointer</summary>
  <dl>
    <div><dt>+ −</dt><dd>larger, smaller; also Ctrl and the wheel, a pinch, a double click</dd></div>
    <div><dt>0</dt><dd>all of it</dd></div>
    <div><dt>1</dt><dd>one pixel of the picture on one of the screen</dd></div>
    <div><dt>P</dt><dd>printed size</dd></div>
    <div><dt>Arrows</dt><dd>move the picture; also drag, or the wheel once it was clicked</dd></div>
    <div><dt>Shift, arrows</dt><dd>move the reading point, whose stored values are told</dd></div>
    <div><dt>Page Up, Down</dt><dd>the picture before, the picture after it in the book</dd></div>
  </dl>
</details>`;

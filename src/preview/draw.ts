// no-unit-test: it lives in a webview; test/e2e/suites/book/preview.test.ts tests it there
import { type Html, html } from '../report/page/html';
import { orderChoice, type Shown } from '../report/page/orders';
import { sheet as sheetPage } from '../report/page/sheet';
import type { Sheet } from '../shared/sheet';
import { toldApart } from './told-apart';

/**
 * Draws a sheet into `page`; `plate`, where the picture is seen, `remedy`, where it is seen converted, `facing`, where it
 * is seen beside what faces it, `crops`, where it is seen printed, and the keyboard's place outlive the drawing.
 */
export function drawSheet(
  page: HTMLElement,
  sheet: Sheet,
  { plate, remedy, crops, facing }: Record<'plate' | 'remedy' | 'crops' | 'facing', HTMLElement>,
  shown: Shown,
) {
  const focused = document.activeElement?.id;
  const controls = html`
<div class="controls">
  <label class="light">Light <select id="light">
    <option value="">as the settings say</option>
    ${sheet.lights.map(({ id, name }) => html`<option value="${id}"${id === sheet.light && html` selected`}>${name}</option>`)}
  </select></label>
  ${orderChoice(shown)}
  <button type="button" class="plain" id="others">Draw ten others</button>
</div>
<div id="crops"></div>`;
  page.innerHTML = sheetPage(sheet, {
    picture: html`<div id="plate"></div>`,
    controls,
    pager: html`${pager(sheet)}${neighbours(sheet)}`,
    rule: id => html`<button type="button" class="link" data-rule="${id}">${id}</button>`,
    id: 'sheet',
  }).text;
  page.querySelector('#plate')!.replaceWith(plate);
  page.querySelector('#crops')?.replaceWith(crops);
  page.querySelector('.spread')!.after(facing, remedy);
  if (sheet.advice.kind === 'convert') page.querySelector('.advice')!.append(toRemedy());
  if (focused) document.getElementById(focused)?.focus();
}

/** The advice's one button. */
function toRemedy(): HTMLElement {
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'primary';
  button.id = 'lead';
  button.textContent = 'See before and after';
  return button;
}

/** A choice of pages where the file has several. */
const pager = ({ page, pages }: Sheet) =>
  pages > 1
    ? html`
<label class="pager">Page <select id="page">
  ${Array.from({ length: pages }, (_, i) => html`<option value="${i + 1}"${i + 1 === page && html` selected`}>${i + 1} of ${pages}</option>`)}
</select></label>`
    : undefined;

/** To the pictures before and after it in the book. */
function neighbours({ path, place }: Sheet): Html | undefined {
  if (!place?.before && !place?.after) return undefined;
  const all = [path, place.before, place.after];
  const to = (id: string, at: string | null, words: (name: string) => string) =>
    at &&
    html`<button type="button" class="link" id="${id}" data-open="${at}">${words(toldApart(at, all))}</button>`;
  return html`
<nav class="neighbours" aria-label="In the order of the book">
  ${to('before', place.before, name => `← ${name}`)}
  ${to('after', place.after, name => `${name} →`)}
</nav>`;
}

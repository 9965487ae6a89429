// no-unit-test: it lives in a webview; test/e2e/suites/book/preview.test.ts tests it there
import { t } from '@vscode/l10n';
import { type Html, html } from '../report/page/html';
import { type OrderWords, orderChoice, type Shown } from '../report/page/orders';
import { sheet as sheetPage } from '../report/page/sheet';
import type { Sheet } from '../shared/sheet';
import { filled } from './sentence';
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
<div class="controls" lang="${language()}">
  ${lights(sheet)}
  ${orderChoice(shown, orderWords())}
  <button type="button" class="plain" id="others">${t('Draw ten others')}</button>
</div>
<div id="crops"></div>`;
  // the sheet around is that of the exported page too, in English alone
  page.lang = 'en';
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
  for (const element of [plate, crops, facing, remedy]) element.lang = language();
  const { kind, places } = sheet.advice;
  if (kind === 'convert') page.querySelector('.advice')!.append(button('lead', t('See before and after')));
  if (places) page.querySelector('.advice')!.append(button('place', t('Have a PNG of it placed')));
  if (focused) document.getElementById(focused)?.focus();
}

/** Of the page, and of all in it that is no finding, forecast or encoding. */
const language = () => document.documentElement.lang;

const lights = ({ lights, light }: Sheet): Html => html`
<label class="light">${filled(
  t('Light {0}'),
  html`<select id="light">
    <option value="">${t('as the settings say')}</option>
    ${lights.map(({ id, name }) => html`<option lang="en" value="${id}"${id === light && html` selected`}>${name}</option>`)}
  </select>`,
)}</label>`;

const orderWords = (): OrderWords => ({
  order: t('Possible order'),
  drawn: t('Drawn'),
  alone: t('as eyes used to this paper see it'),
  beside: t('as it looks beside a pure white page'),
});

/** The advice's one button. */
function button(id: string, words: string): HTMLElement {
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'primary';
  button.id = id;
  button.lang = language();
  button.textContent = words;
  return button;
}

/** A choice of pages where the file has several. */
const pager = ({ page, pages }: Sheet) =>
  pages > 1
    ? html`
<label class="pager" lang="${language()}">${filled(
        t('Page {0}'),
        html`<select id="page">
  ${Array.from({ length: pages }, (_, i) => html`<option value="${i + 1}"${i + 1 === page && html` selected`}>${t('{0} of {1}', i + 1, pages)}</option>`)}
</select>`,
      )}</label>`
    : undefined;

/** To the pictures before and after it in the book. */
function neighbours({ path, place }: Sheet): Html | undefined {
  if (!place?.before && !place?.after) return undefined;
  const all = [path, place.before, place.after];
  const to = (id: string, at: string | null, words: (name: string) => string) =>
    at &&
    html`<button type="button" class="link" id="${id}" data-open="${at}">${words(toldApart(at, all))}</button>`;
  return html`
<nav class="neighbours" lang="${language()}" aria-label="${t('In the order of the book')}">
  ${to('before', place.before, name => `← ${name}`)}
  ${to('after', place.after, name => `${name} →`)}
</nav>`;
}

// no-unit-test: it lives in a webview; test/e2e/suites/convert/preview.test.ts tests it there
import { t } from '@vscode/l10n';
import { type Html, html } from '../report/page/html';
import { choice } from '../report/page/orders';
import { printed } from '../report/page/typography';
import type { BeforeAndAfter, ForecastChange, Made, Remedies } from '../shared/remedies';
import { filled, inEnglish } from './sentence';

/** What is chosen in the section. */
export interface Choice extends Made {
  view: 'wipe' | 'sides';
  zoom: number;
}

const ZOOMS = [1, 2, 4];

/** The section before anything was converted: choices and empty places. */
export const remedySection = (remedies: Remedies, chosen: Choice, coloured: boolean): Html => html`
<h2 class="large" id="remedy-title">${t('Before and after')}</h2>
<p class="caution">${t('What a conversion would make of this picture: the real one, shown small. Nothing is written until you convert. A screen shows how tones move, not how they print.')}</p>
<div class="remedy-choices">
  ${choice(
    'to',
    t('Make of it'),
    remedies.encodings.map(({ id, name }) => ({
      id: `to-${id}`,
      value: id,
      words:
        id === remedies.recommended.to ? filled(t('{0} (recommended)'), inEnglish(name)) : inEnglish(name),
      checked: id === chosen.to,
    })),
  )}
  <p id="remedy-does"></p>
</div>
${coloured && gallery(remedies, chosen)}
${viewBar(chosen)}
<figure class="comparison">
  <div class="sides"><span id="remedy-before">${t('As it is')}</span><span id="remedy-after">${t('As it would be')}</span></div>
  <div id="panes"></div>
</figure>
<p id="remedy-status" role="status"></p>
<p class="remedy-act"><button type="button" class="primary" id="convert">${t('Convert this picture...')}</button> <span id="remedy-done" role="status"></span></p>
<div id="remedy-outcome"></div>`;

/** How the two are seen: one over the other or side by side, and how large. */
export const viewBar = ({ view, zoom }: Pick<Choice, 'view' | 'zoom'>): Html => html`
<div class="remedy-bar" id="bar">
  ${choice('view', t('Shown'), [
    { id: 'view-wipe', value: 'wipe', words: t('with a bar to wipe'), checked: view === 'wipe' },
    { id: 'view-sides', value: 'sides', words: t('side by side'), checked: view === 'sides' },
  ])}
  ${choice(
    'zoom',
    t('Zoom'),
    ZOOMS.map(times => ({
      id: `zoom-${times}`,
      value: times,
      words: times === 1 ? t('all of it') : t('{0} times', times),
      checked: times === zoom,
    })),
  )}
</div>`;

/** The picture itself, then every way to grey on it: choosing one shows it large. */
const gallery = ({ methods }: Remedies, { method }: Choice): Html => html`
<fieldset class="gallery" data-choice="method">
  <legend>${t('From colour to grey')}</legend>
  <p class="caution">${t('All ways on this very picture. Choose the one whose tones tell what you saw.')}</p>
  <div class="ways">
    <div class="one-way"><span class="small-picture" data-method=""></span><strong>${t('As it is')}</strong></div>
    ${methods.map(
      ({ id, name, does }) => html`
    <div class="one-way"><input type="radio" name="method" id="method-${id}" value="${id}"${id === method && html` checked`}/><label for="method-${id}"><span class="small-picture" data-method="${id}"></span><strong lang="en">${name}</strong> <span class="does" lang="en">${does}</span></label></div>`,
    )}
  </div>
</fieldset>`;

/** What would be stored, what there is to know, and what changes in the forecast. */
export const outcome = ({ from, found, proof, told, changes }: BeforeAndAfter): Html => html`
<div class="columns">
  <div>
    <h3>${t('What is done')}</h3>
    <p>${filled(t('{0} becomes {1}.'), named(from.name, from.id), named(lower(found.name), found.id))}</p>
    <p lang="en">${proof}</p>
    ${told.length > 0 && html`<ul lang="en">${told.map(line => html`<li>${printed(line)}</li>`)}</ul>`}
  </div>
  <div>
    <h3>${t('What changes in the forecast')}</h3>
    ${changes.length === 0 && html`<p>${t('No forecast can be made of it.')}</p>`}
    ${changes.map(change => changeTable(change, { before: t('As it is'), after: t('As it would be') }))}
  </div>
</div>`;

/** What changes on one target, figure by figure. `sides`: how the two are called. */
export const changeTable = (
  { process, paper, light, basisWords, rows, more }: ForecastChange,
  sides: { before: string; after: string },
): Html => html`
<div class="table" tabindex="0" role="region" aria-label="${t('Before and after on {0}', process)}">
<table class="changes">
  <thead><tr><th scope="col" lang="en">${process}<small>${paper}</small><small>${light}</small><small>${basisWords}</small></th><th scope="col">${sides.before}</th><th scope="col">${sides.after}</th></tr></thead>
  <tbody>${rows.map(row)}</tbody>
  ${more.length > 0 && html`<tbody class="more"><tr><th scope="rowgroup" colspan="3">${t('Other figures that change')}</th></tr>${more.map(row)}</tbody>`}
</table>
</div>`;

const row = ({ label, before, after }: ForecastChange['rows'][number]): Html =>
  html`<tr lang="en"><th scope="row">${label}</th><td>${before}</td><td>${after}</td></tr>`;

const named = (name: string, id: string): Html => html`<span lang="en">${name} <code>${id}</code></span>`;

const lower = (name: string) => name[0].toLowerCase() + name.slice(1);

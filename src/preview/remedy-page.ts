// no-unit-test: it lives in a webview; test/e2e/suites/convert/preview.test.ts tests it there
import { type Html, html } from '../report/page/html';
import { choice } from '../report/page/orders';
import { printed } from '../report/page/typography';
import type { BeforeAndAfter, ForecastChange, Made, Remedies } from '../shared/remedies';

/** What is chosen in the section. */
export interface Choice extends Made {
  view: 'wipe' | 'sides';
  zoom: number;
}

const ZOOMS = [1, 2, 4];

/** The section before anything was converted: choices and empty places. */
export const remedySection = (remedies: Remedies, chosen: Choice, coloured: boolean): Html => html`
<h2 class="large" id="remedy-title">Before and after</h2>
<p class="caution">What a conversion would make of this picture: the real one, shown small. Nothing is written until you convert. A screen shows how tones move, not how they print.</p>
<div class="remedy-choices">
  ${choice(
    'to',
    'Make of it',
    remedies.encodings.map(({ id, name }) => ({
      id: `to-${id}`,
      value: id,
      words: id === remedies.recommended.to ? `${name} (recommended)` : name,
      checked: id === chosen.to,
    })),
  )}
  <p id="remedy-does"></p>
</div>
${coloured && gallery(remedies, chosen)}
<div class="remedy-bar">
  ${choice('view', 'Shown', [
    { id: 'view-wipe', value: 'wipe', words: 'with a bar to wipe', checked: chosen.view === 'wipe' },
    { id: 'view-sides', value: 'sides', words: 'side by side', checked: chosen.view === 'sides' },
  ])}
  ${choice(
    'zoom',
    'Zoom',
    ZOOMS.map(zoom => ({
      id: `zoom-${zoom}`,
      value: zoom,
      words: zoom === 1 ? 'all of it' : `${zoom} times`,
      checked: zoom === chosen.zoom,
    })),
  )}
</div>
<figure class="comparison">
  <div class="sides"><span id="remedy-before">As it is</span><span id="remedy-after">As it would be</span></div>
  <div id="panes"></div>
</figure>
<p id="remedy-status" role="status"></p>
<p class="remedy-act"><button type="button" class="primary" id="convert">Convert this picture...</button> <span id="remedy-done" role="status"></span></p>
<div id="remedy-outcome"></div>`;

/** The picture itself, then every way to grey on it: choosing one shows it large. */
const gallery = ({ methods }: Remedies, { method }: Choice): Html => html`
<fieldset class="gallery" data-choice="method">
  <legend>From colour to grey</legend>
  <p class="caution">All ways on this very picture. Choose the one whose tones tell what you saw.</p>
  <div class="ways">
    <div class="one-way"><span class="small-picture" data-method=""></span><strong>As it is</strong></div>
    ${methods.map(
      ({ id, name, does }) => html`
    <div class="one-way"><input type="radio" name="method" id="method-${id}" value="${id}"${id === method && html` checked`}/><label for="method-${id}"><span class="small-picture" data-method="${id}"></span><strong>${name}</strong> <span class="does">${does}</span></label></div>`,
    )}
  </div>
</fieldset>`;

/** What would be stored, what there is to know, and what changes in the forecast. */
export const outcome = ({ from, found, proof, told, changes }: BeforeAndAfter): Html => html`
<div class="columns">
  <div>
    <h3>What is done</h3>
    <p>${from.name} <code>${from.id}</code> becomes ${lower(found.name)} <code>${found.id}</code>.</p>
    <p>${proof}</p>
    ${told.length > 0 && html`<ul>${told.map(line => html`<li>${printed(line)}</li>`)}</ul>`}
  </div>
  <div>
    <h3>What changes in the forecast</h3>
    ${changes.length === 0 && html`<p>No forecast can be made of it.</p>`}
    ${changes.map(change => changeTable(change, { before: 'As it is', after: 'As it would be' }))}
  </div>
</div>`;

/** What changes on one target, figure by figure. `sides`: how the two are called. */
export const changeTable = (
  { process, paper, light, basisWords, rows, more }: ForecastChange,
  sides: { before: string; after: string },
): Html => html`
<div class="table" tabindex="0" role="region" aria-label="Before and after on ${process}">
<table class="changes">
  <thead><tr><th scope="col">${process}<small>${paper}</small><small>${light}</small><small>${basisWords}</small></th><th scope="col">${sides.before}</th><th scope="col">${sides.after}</th></tr></thead>
  <tbody>${rows.map(row)}</tbody>
  ${more.length > 0 && html`<tbody class="more"><tr><th scope="rowgroup" colspan="3">Other figures that change</th></tr>${more.map(row)}</tbody>`}
</table>
</div>`;

const row = ({ label, before, after }: ForecastChange['rows'][number]): Html =>
  html`<tr><th scope="row">${label}</th><td>${before}</td><td>${after}</td></tr>`;

const lower = (name: string) => name[0].toLowerCase() + name.slice(1);

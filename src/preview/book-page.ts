// no-unit-test: it lives in a webview; test/e2e/suites/overview tests it there
import { t } from '@vscode/l10n';
import { type Html, html } from '../report/page/html';
import { mark } from '../report/page/marks';
import { choice } from '../report/page/orders';
import { findings } from '../report/page/sheet';
import type { Facet, Overview, OverviewPicture } from '../shared/overview';
import type { BookState } from './book-state';
import { inEnglish } from './sentence';

/** The whole page but what is drawn of the pictures, and what depends on the choice of them. */
export const bookPage = (folder: string, book: Overview, state: BookState): Html => html`
<header class="book">
  <h1>${folder}</h1>
  <p class="verdict" lang="en">${book.verdict}</p>
  ${book.begin && html`<p lang="en">${book.begin}</p>`}
  <p class="terms" lang="en">${book.targets.map((line, i) => html`${i > 0 && html`<br/>`}${line}`)}</p>
  ${book.facets.filter(({ id }) => id === 'doing').map(doings)}
</header>
${whole(book, state)}
<section class="facets" aria-label="${t('Show only some pictures')}">
  ${book.facets.filter(({ id, values }) => id !== 'doing' && values.length > 0).map(facet)}
</section>
<div class="tools">
  ${choice('drawn', t('Drawn as'), ways(state.drawn))}
  <span class="acts">
    <button type="button" class="plain" id="choose-convert">${t('Choose what is to be converted')}</button>
    <button type="button" class="plain" id="choose">${t('Choose all shown')}</button>
    <button type="button" class="primary" id="convert" disabled>${t('Convert...')}</button>
    <button type="button" class="plain" id="export">${t('Export as one HTML page...')}</button>
  </span>
</div>
<p class="caution" id="as-drawn"></p>
<p class="count"><span id="count" role="status"></span> <button type="button" class="link" id="all" hidden>${t('Show all')}</button> <span id="busy" role="status"></span></p>
<div class="contacts" id="contacts" role="listbox" aria-multiselectable="true" aria-label="${t('The pictures in the order of the book')}">
  ${book.spreads.map(spread =>
    spread.length > 1
      ? html`<div class="opening" role="group" aria-label="${t('Facing: {0}', spread.map(i => nameOf(book.pictures[i])).join(', '))}">${spread.map(i => contact(book.pictures[i], i))}</div>`
      : contact(book.pictures[spread[0]], spread[0]),
  )}
</div>
<details id="table"><summary>${t('The pictures shown, as a table')}</summary><div></div></details>`;

const doings = ({ id, values }: Facet): Html => html`
<div class="doings" role="group" aria-label="${t('What to do: show only these')}">${values.map(
  value =>
    html`<button type="button" aria-pressed="false" lang="en" data-facet="${id}" data-value="${value.id}">${mark(value.id === 'fix' ? 'convert' : (value.id as 'send'))}<b>${value.count}</b> ${value.name}</button>`,
)}</div>`;

const facet = ({ id, name, values }: Facet): Html => html`
<div class="facet" role="group" lang="en" aria-label="${name}"><span>${name}</span><div>${values.map(
  value =>
    html`<button type="button" aria-pressed="false" data-facet="${id}" data-value="${value.id}">${value.severity && mark(value.severity)}${value.severity && html`<span class="hidden">${value.severity}: </span>`}${value.name} <b>${value.count}</b></button>`,
)}</div></div>`;

/** What is said once for all pictures. */
function whole({ shared, remarks, closing }: Overview, { whole }: BookState): Html {
  const rule = (id: string) => html`<button type="button" class="link" data-rule="${id}">${id}</button>`;
  return html`
<details class="whole" id="whole"${whole && html` open`}>
  <summary>${wholeSays(shared.length, remarks.length)}</summary>
  <p class="terms" lang="en">${closing}</p>
  ${findings(t('For the whole book'), shared, { rule })}
  ${remarks.length > 0 && html`<section class="remarks" aria-label="${t('To know')}"><h2>${t('To know')}</h2><ul lang="en">${remarks.map(line => html`<li>${line}</li>`)}</ul></section>`}
</details>`;
}

function wholeSays(findings: number, remarks: number): string {
  if (findings === 0)
    return remarks === 0 ? t('For the whole book') : t('For the whole book: {0} to know', remarks);
  if (findings === 1)
    return remarks === 0
      ? t('For the whole book: 1 finding')
      : t('For the whole book: 1 finding, {0} to know', remarks);
  return remarks === 0
    ? t('For the whole book: {0} findings', findings)
    : t('For the whole book: {0} findings, {1} to know', findings, remarks);
}

const ways = (drawn: BookState['drawn']) =>
  [
    ['0', t('one possible order')],
    ['1', t('another')],
    ['2', t('a third')],
    ['files', t('the files')],
  ].map(([value, words]) => ({ id: `drawn-${value}`, value, words, checked: value === drawn }));

export const asDrawn = (drawn: BookState['drawn']): string =>
  drawn === 'files'
    ? t('The files, as a screen shows them. Below each: one light grey of it in ten possible orders.')
    : t(
        'One possible order, the same for all pictures: not the colours that they will have. A picture without a forecast is shown as its file. Below each: one light grey of it in ten possible orders. A screen is no proof.',
      );

function contact(picture: OverviewPicture, i: number): Html {
  const { advice, outlier, encoding } = picture;
  return html`
<div class="contact" role="option" aria-selected="false" tabindex="-1" id="contact-${i}" data-at="${i}" data-path="${picture.path}" title="${`${nameOf(picture)}\n${t('{0}: {1}', advice.title, advice.reason)}`}">
  <span class="frame"></span>
  <span class="greys"></span>
  <span class="name">${nameOf(picture)}</span>
  <small lang="en">${encoding}</small>
  <span class="tags"><span class="tag" data-kind="${advice.kind}">${mark(advice.kind)}${word(picture)}</span>${outlier && html`<span class="tag" lang="en">${mark('outlier')}${outlier}</span>`}</span>
  <span class="hidden" lang="en">${advice.title}${/[.?!]$/.test(advice.title) ? '' : '.'} ${advice.reason}</span>
  <span class="chosen">${mark('chosen')}</span>
</div>`;
}

export const nameOf = ({ path, page }: Pick<OverviewPicture, 'path' | 'page'>): string =>
  page > 1 ? t('{0} (page {1})', path, page) : path;

/** What it asks for. */
const word = ({ advice: { kind, tag } }: OverviewPicture): string | Html => {
  if (kind === 'send') return t('send');
  if (kind === 'leave') return t('not judged');
  return inEnglish(tag);
};

/** The same pictures for those who read a table. */
export const table = (pictures: readonly OverviewPicture[]): Html => html`
<div class="table" tabindex="0" role="region" aria-label="${t('The pictures as a table')}">
<table>
  <thead><tr>${columns().map(name => html`<th scope="col">${name}</th>`)}</tr></thead>
  <tbody>${pictures.map(
    picture =>
      html`<tr><th scope="row">${nameOf(picture)}</th>${[picture.encoding, picture.advice.title, picture.advice.reason].map(english)}${picture.has.rule.length > 0 ? english(picture.has.rule.join(', ')) : html`<td>${t('none')}</td>`}${english(picture.outlier ?? '')}</tr>`,
  )}</tbody>
</table>
</div>`;

const columns = () => [
  t('Picture'),
  t('Encoding'),
  t('What to do'),
  t('Why'),
  t('Findings'),
  t('Among the others'),
];

const english = (words: string): Html => html`<td lang="en">${words}</td>`;

// no-unit-test: it lives in a webview; test/e2e/suites/overview tests it there
import { type Html, html } from '../report/page/html';
import { mark } from '../report/page/marks';
import { choice } from '../report/page/orders';
import { findings } from '../report/page/sheet';
import type { Facet, Overview, OverviewPicture } from '../shared/overview';
import type { BookState } from './book-state';

/** The whole page but what is drawn of the pictures, and what depends on the choice of them. */
export const bookPage = (folder: string, book: Overview, state: BookState): Html => html`
<header class="book">
  <h1>${folder}</h1>
  <p class="verdict">${book.verdict}</p>
  ${book.begin && html`<p>${book.begin}</p>`}
  ${book.facets.filter(({ id }) => id === 'doing').map(doings)}
</header>
${whole(book, state)}
<section class="facets" aria-label="Show only some pictures">
  ${book.facets.filter(({ id, values }) => id !== 'doing' && values.length > 0).map(facet)}
</section>
<div class="tools">
  ${choice('drawn', 'Drawn as', ways(state.drawn))}
  <span class="acts">
    <button type="button" class="plain" id="choose-convert">Choose what is to be converted</button>
    <button type="button" class="plain" id="choose">Choose all shown</button>
    <button type="button" class="primary" id="convert" disabled>Convert...</button>
    <button type="button" class="plain" id="export">Export as one HTML page...</button>
  </span>
</div>
<p class="caution" id="as-drawn"></p>
<p class="count"><span id="count" role="status"></span> <button type="button" class="link" id="all" hidden>Show all</button> <span id="busy" role="status"></span></p>
<div class="contacts" id="contacts" role="listbox" aria-multiselectable="true" aria-label="The pictures in the order of the book">
  ${book.spreads.map(spread =>
    spread.length > 1
      ? html`<div class="opening" role="group" aria-label="${`Facing: ${spread.map(i => nameOf(book.pictures[i])).join(', ')}`}">${spread.map(i => contact(book.pictures[i], i))}</div>`
      : contact(book.pictures[spread[0]], spread[0]),
  )}
</div>
<details id="table"><summary>The pictures shown, as a table</summary><div></div></details>`;

const doings = ({ id, values }: Facet): Html => html`
<div class="doings" role="group" aria-label="What to do: show only these">${values.map(
  value =>
    html`<button type="button" aria-pressed="false" data-facet="${id}" data-value="${value.id}">${mark(value.id === 'fix' ? 'convert' : (value.id as 'send'))}<b>${value.count}</b> ${value.name}</button>`,
)}</div>`;

const facet = ({ id, name, values }: Facet): Html => html`
<div class="facet" role="group" aria-label="${name}"><span>${name}</span><div>${values.map(
  value =>
    html`<button type="button" aria-pressed="false" data-facet="${id}" data-value="${value.id}">${value.severity && mark(value.severity)}${value.severity && html`<span class="hidden">${value.severity}: </span>`}${value.name} <b>${value.count}</b></button>`,
)}</div></div>`;

/** What is said once for all pictures. */
function whole({ shared, remarks, targets, closing }: Overview, { whole }: BookState): Html {
  const rule = (id: string) => html`<button type="button" class="link" data-rule="${id}">${id}</button>`;
  const parts = [
    ...(shared.length ? [`${shared.length} ${shared.length === 1 ? 'finding' : 'findings'}`] : []),
    ...(remarks.length ? [`${remarks.length} to know`] : []),
  ];
  return html`
<details class="whole" id="whole"${whole && html` open`}>
  <summary>For the whole book${parts.length > 0 && `: ${parts.join(', ')}`}</summary>
  <p class="terms">${closing}${targets.map(line => html`<br/>${line}`)}</p>
  ${findings('For the whole book', shared, { rule })}
  ${remarks.length > 0 && html`<section class="remarks" aria-label="To know"><h2>To know</h2><ul>${remarks.map(line => html`<li>${line}</li>`)}</ul></section>`}
</details>`;
}

const ways = (drawn: BookState['drawn']) =>
  [
    ['0', 'one possible order'],
    ['1', 'another'],
    ['2', 'a third'],
    ['files', 'the files'],
  ].map(([value, words]) => ({ id: `drawn-${value}`, value, words, checked: value === drawn }));

export const asDrawn = (drawn: BookState['drawn']): string =>
  drawn === 'files'
    ? 'The files, as a screen shows them. Below each: one light grey of it in ten possible orders.'
    : 'One possible order, the same for all pictures: not the colours that they will have. A picture without a forecast is shown as its file. Below each: one light grey of it in ten possible orders. A screen is no proof.';

function contact(picture: OverviewPicture, i: number): Html {
  const { advice, outlier, encoding } = picture;
  return html`
<div class="contact" role="option" aria-selected="false" tabindex="-1" id="contact-${i}" data-at="${i}" data-path="${picture.path}" title="${`${nameOf(picture)}\n${advice.title}: ${advice.reason}`}">
  <span class="frame"></span>
  <span class="greys"></span>
  <span class="name">${nameOf(picture)}</span>
  <small>${encoding}</small>
  <span class="tags"><span class="tag" data-kind="${advice.kind}">${mark(advice.kind)}${word(picture)}</span>${outlier && html`<span class="tag">${mark('outlier')}${outlier}</span>`}</span>
  <span class="hidden">${advice.title}. ${advice.reason}</span>
  <span class="chosen">${mark('chosen')}</span>
</div>`;
}

export const nameOf = ({ path, page }: Pick<OverviewPicture, 'path' | 'page'>): string =>
  page > 1 ? `${path} (page ${page})` : path;

/** What it asks for, without what goes without saying. */
const word = ({ advice: { kind, title } }: OverviewPicture): string => {
  if (kind === 'send') return 'send';
  if (kind === 'leave') return 'not judged';
  return title.replace(/ (it|the file|the picture|first)(?= |$)/g, '').toLowerCase();
};

/** The same pictures for those who read a table. */
export const table = (pictures: readonly OverviewPicture[]): Html => html`
<div class="table" tabindex="0" role="region" aria-label="The pictures as a table">
<table>
  <thead><tr><th scope="col">Picture</th><th scope="col">Encoding</th><th scope="col">What to do</th><th scope="col">Why</th><th scope="col">Findings</th><th scope="col">Among the others</th></tr></thead>
  <tbody>${pictures.map(
    picture =>
      html`<tr><th scope="row">${nameOf(picture)}</th><td>${picture.encoding}</td><td>${picture.advice.title}</td><td>${picture.advice.reason}</td><td>${picture.has.rule.join(', ') || 'none'}</td><td>${picture.outlier ?? ''}</td></tr>`,
  )}</tbody>
</table>
</div>`;

// no-unit-test: it lives in a webview; test/e2e/suites/review tests it there
import { type Html, html } from '../report/page/html';
import { mark } from '../report/page/marks';
import { choice } from '../report/page/orders';
import { findings } from '../report/page/sheet';
import { printed } from '../report/page/typography';
import type { ForecastChange } from '../shared/remedies';
import type {
  ChangeVerdict,
  ComparedFact,
  Review,
  ReviewEntry,
  ReviewedPicture,
  Since,
} from '../shared/review';
import type { View } from './comparison';
import { changeTable } from './remedy-page';

const TITLES: Record<Since, string> = {
  commit: 'What changed since the last commit',
  branch: 'What changed on this branch',
};

const MARKS = { worse: 'warning', mixed: 'warning', better: 'chosen', same: 'leave', gone: 'leave' } as const;

const verdict = ({ kind, words }: ChangeVerdict): Html => html`${mark(MARKS[kind])} ${words}`;

const rule = (id: string) => html`<button type="button" class="link" data-rule="${id}">${id}</button>`;

/** Every changed picture in a line; what is said of the whole book stands beneath. `told`: what to know first. */
export const listPage = (review: Review, since: Since, told: string): Html => html`
<header class="book">
  <h1>${TITLES[since]}</h1>
  <p class="verdict">${review.headline}</p>
  ${review.matching && html`<p>${review.matching}</p>`}
  <p class="terms">${review.compared}</p>
  ${told && html`<p role="status" id="told">${told}</p>`}
</header>
${
  review.pictures.length > 0 &&
  html`
<div class="table" tabindex="0" role="region" aria-label="Changed pictures">
<table class="changed">
  <thead><tr><th scope="col">Picture</th><th scope="col">In print</th><th scope="col">New findings</th><th scope="col">Ended</th></tr></thead>
  <tbody>${review.pictures.map(entry)}</tbody>
</table>
</div>`
}
<p class="acts"><button type="button" class="plain" id="again">Compare again</button></p>
${findings('New for the whole book', review.book.new, { rule })}
${findings('Ended for the whole book', review.book.ended, { rule })}
${remarks('Judged otherwise, though unchanged themselves', review.others)}
${remarks('To know', review.notices)}`;

const entry = ({ path, happened, verdict: said, new: fresh, ended }: ReviewEntry): Html => html`
<tr data-verdict="${said.kind}">
  <th scope="row"><button type="button" class="link" data-path="${path}">${path}</button> <small>${happened}</small></th>
  <td>${verdict(said)}</td>
  <td class="number">${fresh}</td>
  <td class="number">${ended}</td>
</tr>`;

const remarks = (title: string, lines: readonly string[]): Html =>
  html`${lines.length > 0 && html`<section class="remarks" aria-label="${title}"><h2>${title}</h2><ul>${lines.map(line => html`<li>${printed(line)}</li>`)}</ul></section>`}`;

/** One picture before and after. Pictures come later, into their places. */
export function picturePage(picture: ReviewedPicture, review: Review, view: View): Html {
  const { before, after } = picture;
  return html`
<nav><button type="button" class="link" id="list">All that changed (${review.pictures.length})</button></nav>
<header class="book">
  <h1>${picture.path}</h1>
  <p class="verdict">${verdict(picture.verdict)}</p>
  <p class="terms">${sentence(picture.happened)} ${review.compared}</p>
  ${picture.pages.length > 1 && pager(picture)}
</header>
${(before || after) && figure(picture, view)}
<ul class="says">${picture.says.map(line => html`<li>${sentence(line)}</li>`)}</ul>
${findings('New', picture.findings.new, { rule })}
${findings('Ended', picture.findings.ended, { rule })}
${findings('As before', picture.findings.unchanged, { rule })}
${picture.neighbours.length > 0 && neighbours(picture)}
<div class="columns">
  ${picture.facts.length > 0 && facts(picture.facts)}
  ${picture.forecasts.length > 0 && forecasts(picture.forecasts)}
</div>
${after && html`<p class="acts"><button type="button" class="plain" data-open="${after.path}">Show how it prints now</button></p>`}
${remarks('To know', review.notices)}`;
}

const pager = ({ page, pages }: ReviewedPicture): Html => html`
<label class="pager">Page <select id="page">${pages.map(number => html`<option value="${number}"${number === page && html` selected`}>${number}</option>`)}</select></label>`;

/** Both over each other or side by side; one alone where there is but one. */
function figure({ before, after }: ReviewedPicture, { view, zoom }: View): Html {
  const both = before && after;
  return html`
${
  both &&
  html`<div class="remedy-bar" id="bar">
  ${choice('view', 'Shown', [
    { id: 'view-wipe', value: 'wipe', words: 'with a bar to wipe', checked: view === 'wipe' },
    { id: 'view-sides', value: 'sides', words: 'side by side', checked: view === 'sides' },
  ])}
  ${choice(
    'zoom',
    'Zoom',
    [1, 2, 4].map(times => ({
      id: `zoom-${times}`,
      value: times,
      words: times === 1 ? 'all of it' : `${times} times`,
      checked: times === zoom,
    })),
  )}
</div>`
}
<figure class="comparison">
  <div class="sides">${before && html`<span>Before: ${before.encoding}</span>`}${after && html`<span>${before ? 'After' : 'Now'}: ${after.encoding}</span>`}</div>
  <div id="panes"><p role="status">The pictures are being read.</p></div>
</figure>
<p class="caution">The files, as a screen shows them: they are no forecast. How each may print is said below, and a test print says more.</p>`;
}

const neighbours = ({ path, neighbours: all }: ReviewedPicture): Html => html`
<section class="stands" aria-labelledby="neighbours">
<h2 id="neighbours">Where it stands in the book</h2>
<ul>${all.map(
  each =>
    html`<li><span class="small" data-neighbour="${each.path}"></span>${
      each.path === path
        ? html`<strong>${each.path}</strong>`
        : html`<button type="button" class="link" data-open="${each.path}">${each.path}</button>`
    }${each.beside && html` <small>on the same spread</small>`}</li>`,
)}</ul>
</section>`;

function facts(all: readonly ComparedFact[]): Html {
  const other = all.filter(({ before, after }) => before !== after);
  const same = all.filter(({ before, after }) => before === after);
  return html`
<section>
<h2>The files</h2>
${other.length > 0 ? factTable('What differs', other) : html`<p>Nothing that was read of the two differs.</p>`}
${same.length > 0 && html`<details><summary>The same in both</summary>${factTable('The same in both', same)}</details>`}
</section>`;
}

const factTable = (label: string, all: readonly ComparedFact[]): Html => html`
<div class="table" tabindex="0" role="region" aria-label="${label}">
<table class="changes">
  <thead><tr><th scope="col">${label}</th><th scope="col">Before</th><th scope="col">After</th></tr></thead>
  <tbody>${all.map(({ label: name, before, after }) => html`<tr><th scope="row">${name}</th><td>${before || NONE}</td><td>${after || NONE}</td></tr>`)}</tbody>
</table>
</div>`;

const NONE = 'none';

const forecasts = (all: readonly ForecastChange[]): Html => html`
<section>
<h2>The forecast</h2>
${all.map(change => changeTable(change, { before: 'Before', after: 'After' }))}
</section>`;

const sentence = (words: string) => `${words[0].toUpperCase()}${words.slice(1)}.`;

// no-unit-test: it lives in a webview; test/e2e/suites/review tests it there
import { t } from '@vscode/l10n';
import { type Html, html } from '../report/page/html';
import { mark } from '../report/page/marks';
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
import { type Choice, changeTable, viewBar } from './remedy-page';
import { filled, inEnglish } from './sentence';

const title = (since: Since): string =>
  since === 'commit' ? t('What changed since the last commit') : t('What changed on this branch');

const MARKS = { worse: 'warning', mixed: 'warning', better: 'chosen', same: 'leave', gone: 'leave' } as const;

const verdict = ({ kind, words }: ChangeVerdict): Html => html`${mark(MARKS[kind])} ${inEnglish(words)}`;

const rule = (id: string) => html`<button type="button" class="link" data-rule="${id}">${id}</button>`;

/** Every changed picture in a line; what is said of the whole book stands beneath. `told`: what to know first. */
export const listPage = (review: Review, since: Since, told: string): Html => html`
<header class="book">
  <h1>${title(since)}</h1>
  <p class="verdict" lang="en">${review.headline}</p>
  ${review.matching && html`<p lang="en">${review.matching}</p>`}
  <p class="terms" lang="en">${review.compared}</p>
  ${told && html`<p role="status" id="told">${told}</p>`}
</header>
${
  review.pictures.length > 0 &&
  html`
<div class="table" tabindex="0" role="region" aria-label="${t('Changed pictures')}">
<table class="changed">
  <thead><tr>${[t('Picture'), t('In print'), t('New findings'), t('Ended')].map(column)}</tr></thead>
  <tbody>${review.pictures.map(entry)}</tbody>
</table>
</div>`
}
<p class="acts"><button type="button" class="plain" id="again">${t('Compare again')}</button></p>
${findings(t('New for the whole book'), review.book.new, { rule })}
${findings(t('Ended for the whole book'), review.book.ended, { rule })}
${remarks(t('Judged otherwise, though unchanged themselves'), review.others)}
${remarks(t('To know'), review.notices)}`;

const column = (name: string): Html => html`<th scope="col">${name}</th>`;

const entry = ({ path, happened, verdict: said, new: fresh, ended }: ReviewEntry): Html => html`
<tr data-verdict="${said.kind}">
  <th scope="row"><button type="button" class="link" data-path="${path}">${path}</button> <small lang="en">${happened}</small></th>
  <td>${verdict(said)}</td>
  <td class="number">${fresh}</td>
  <td class="number">${ended}</td>
</tr>`;

const remarks = (title: string, lines: readonly string[]): Html =>
  html`${lines.length > 0 && html`<section class="remarks" aria-label="${title}"><h2>${title}</h2><ul lang="en">${lines.map(line => html`<li>${printed(line)}</li>`)}</ul></section>`}`;

/** One picture before and after. Pictures come later, into their places. */
export function picturePage(
  picture: ReviewedPicture,
  review: Review,
  view: Pick<Choice, 'view' | 'zoom'>,
): Html {
  const { before, after } = picture;
  return html`
<nav><button type="button" class="link" id="list">${t('All that changed ({0})', review.pictures.length)}</button></nav>
<header class="book">
  <h1>${picture.path}</h1>
  <p class="verdict">${verdict(picture.verdict)}</p>
  <p class="terms" lang="en">${sentence(picture.happened)} ${review.compared}</p>
  ${picture.pages.length > 1 && pager(picture)}
</header>
${(before || after) && figure(picture, view)}
<ul class="says" lang="en">${picture.says.map(line => html`<li>${sentence(line)}</li>`)}</ul>
${findings(t('New'), picture.findings.new, { rule })}
${findings(t('Ended'), picture.findings.ended, { rule })}
${findings(t('As before'), picture.findings.unchanged, { rule })}
${picture.neighbours.length > 0 && neighbours(picture)}
<div class="columns">
  ${picture.facts.length > 0 && facts(picture.facts)}
  ${picture.forecasts.length > 0 && forecasts(picture.forecasts)}
</div>
${after && html`<p class="acts"><button type="button" class="plain" data-open="${after.path}">${t('Show how it prints now')}</button></p>`}
${remarks(t('To know'), review.notices)}`;
}

const pager = ({ page, pages }: ReviewedPicture): Html => html`
<label class="pager">${filled(t('Page {0}'), html`<select id="page">${pages.map(number => html`<option value="${number}"${number === page && html` selected`}>${number}</option>`)}</select>`)}</label>`;

/** Both over each other or side by side; one alone where there is but one. */
function figure({ before, after }: ReviewedPicture, view: Pick<Choice, 'view' | 'zoom'>): Html {
  const now = (encoding: string) => (before ? t('After: {0}', encoding) : t('Now: {0}', encoding));
  return html`
${before && after && viewBar(view)}
<figure class="comparison">
  <div class="sides">${before && html`<span>${t('Before: {0}', before.encoding)}</span>`}${after && html`<span>${now(after.encoding)}</span>`}</div>
  <div id="panes"><p role="status">${t('The pictures are being read.')}</p></div>
</figure>
<p class="caution">${t('The files, as a screen shows them: they are no forecast. How each may print is said below, and a test print says more.')}</p>`;
}

const neighbours = ({ path, neighbours: all }: ReviewedPicture): Html => html`
<section class="stands" aria-labelledby="neighbours">
<h2 id="neighbours">${t('Where it stands in the book')}</h2>
<ul>${all.map(
  each =>
    html`<li><span class="small" data-neighbour="${each.path}"></span>${
      each.path === path
        ? html`<strong>${each.path}</strong>`
        : html`<button type="button" class="link" data-open="${each.path}">${each.path}</button>`
    }${each.beside && html` <small>${t('on the same spread')}</small>`}</li>`,
)}</ul>
</section>`;

function facts(all: readonly ComparedFact[]): Html {
  const other = all.filter(({ before, after }) => before !== after);
  const same = all.filter(({ before, after }) => before === after);
  return html`
<section>
<h2>${t('The files')}</h2>
${other.length > 0 ? factTable(t('What differs'), other) : html`<p>${t('Nothing that was read of the two differs.')}</p>`}
${same.length > 0 && html`<details><summary>${t('The same in both')}</summary>${factTable(t('The same in both'), same)}</details>`}
</section>`;
}

const factTable = (label: string, all: readonly ComparedFact[]): Html => html`
<div class="table" tabindex="0" role="region" aria-label="${label}">
<table class="changes">
  <thead><tr>${[label, t('Before'), t('After')].map(column)}</tr></thead>
  <tbody>${all.map(({ label: name, before, after }) => html`<tr><th scope="row" lang="en">${name}</th>${[before, after].map(stored)}</tr>`)}</tbody>
</table>
</div>`;

const stored = (value: string): Html =>
  value ? html`<td lang="en">${value}</td>` : html`<td>${t('none')}</td>`;

const forecasts = (all: readonly ForecastChange[]): Html => html`
<section>
<h2>${t('The forecast')}</h2>
${all.map(change => changeTable(change, { before: t('Before'), after: t('After') }))}
</section>`;

const sentence = (words: string) => `${words[0].toUpperCase()}${words.slice(1)}.`;

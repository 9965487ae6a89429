import bookStyle from '../../../media/book-page.css';
import sheetStyle from '../../../media/sheet.css';
import { pagesInOrder } from '../../book/order';
import { count, list } from '../../rules/words';
import type { BookReport } from '../../shared/finding';
import { closing } from '../counts';
import { sheetOf } from '../sheet';
import { dutyOf } from '../sheet/advice';
import { begin, verdict } from '../text/begin';
import { remarksOf } from '../text/remarks';
import { targetLines } from '../text/targets';
import { WRITTEN_BY } from '../written-by';
import { type Contact, contacts, nameOf } from './contacts';
import { type Html, html } from './html';
import { type Image, image } from './image';
import { orderChoice } from './orders';
import { findings, sheet } from './sheet';
import { standalone } from './standalone';

/** A picture as it is shown, among the others and, where it has one, on its own sheet; or why it cannot be. */
export type Shown = { small: Image; large: Image | null } | { trouble: string };

/** With more pictures than this, those alone have a sheet that want attention: a page has to be passed on. */
const SHEETS = 60;

/** Which pictures have a sheet of their own on the page: only these are shown large. */
export const sheeted = ({ pictures, findings }: BookReport): boolean[] =>
  pictures.map(picture => pictures.length <= SHEETS || dutyOf(picture, findings) !== null);

/**
 * A book as one page for a browser: what to do first, all pictures on one screen, then a sheet each. Nothing is loaded
 * from anywhere, no script runs. The pictures stand in the order of the book. `shownAs` goes with `pictures` of the
 * report, entry by entry.
 */
export function bookPage(title: string, unordered: BookReport, shownAs: readonly Shown[]): string {
  const report = { ...unordered, pictures: pagesInOrder(unordered.pictures) };
  const shownOf = new Map(unordered.pictures.map((picture, i) => [picture, shownAs[i]]));
  const shown = report.pictures.map(picture => shownOf.get(picture)!);
  const sheets = report.pictures.map(picture => ({
    ...sheetOf(picture, report.findings, { light: null, series: 0 }),
    // said once, for the whole book
    shared: [],
  }));
  const has = sheeted(report);
  const entries = sheets.map((of, i): Contact => {
    const as = shown[i];
    const notShown = 'trouble' in as && !report.pictures[i].facts.unreadable ? as.trouble : null;
    return { sheet: of, small: 'small' in as ? as.small : null, notShown, id: has[i] ? idOf(i) : null };
  });
  const remarks = [...remarksOf(report).flat(), ...notShownOnes(entries)];
  const first = begin(unordered);
  const rule = (id: string) => html`<code>evengrey explain ${id}</code>`;
  const page = html`
<header class="book">
  <h1>${title}</h1>
  <p class="verdict">${verdict(report)}</p>
  ${first && html`<p>${first}</p>`}
  ${entries.length > SHEETS && wanting(entries)}
</header>
<main>
${contacts(report, entries, ALL)}
<div class="whole">
  <p class="terms">${closing(report.summary)}${targetLines(report).map(line => html`<br/>${line}`)}<br/>${WRITTEN_BY}</p>
  ${findings('For the whole book', report.findings, { rule })}
  ${remarks.length > 0 && html`<section class="remarks" aria-label="To know"><h2>To know</h2><ul>${remarks.map(line => html`<li>${line}</li>`)}</ul></section>`}
  ${has.includes(false) && html`<p class="remarks">${onlySome(has)}</p>`}
</div>
${sheets.some(of => of.conditions.length) && html`<div class="orders"><div>${orderChoice({ order: 0, seen: 'alone' })}</div></div>`}
${sheets.map(
  (of, i) =>
    has[i] &&
    html`
<article class="sheet" id="${idOf(i)}">
  ${sheet(of, { picture: plate(shown[i]), pager: onward(report, i), controls: html``, rule, folded: true, id: idOf(i) })}
</article>`,
)}
</main>`;
  return standalone(title, [bookStyle, sheetStyle], page);
}

const ALL = 'all-pictures';
const idOf = (index: number) => `picture-${index + 1}`;

/** Leads back to all pictures, and to the next that wants attention. */
function onward({ pictures, findings }: BookReport, index: number): Html {
  const next = pictures.findIndex((picture, i) => i > index && dutyOf(picture, findings));
  return html`
<nav class="onward" aria-label="Onward">
  <a href="#${ALL}">All pictures</a>
  ${next > 0 && html`<a href="#${idOf(next)}">Next that wants attention: ${pictures[next].path}</a>`}
</nav>`;
}

/** Leads from the top of a large book to the sheets below it. */
function wanting(entries: readonly Contact[]): Html | false {
  const sheeted = entries.filter(({ id }) => id !== null);
  const more = sheeted.length - LINKED;
  return (
    sheeted.length > 0 &&
    html`
<nav class="onward" aria-label="Wanting attention">
  ${sheeted.slice(0, LINKED).map(({ sheet, id }) => html`<a href="#${id}">${nameOf(sheet)}</a>`)}
  ${more > 0 && html`<span>and ${more} more</span>`}
</nav>`
  );
}

/** So many of them are named at the top. */
const LINKED = 60;

function notShownOnes(entries: readonly Contact[]): string[] {
  const names = entries.filter(({ notShown }) => notShown).map(({ sheet }) => nameOf(sheet));
  return names.length ? [`Not shown, for the reason that stands in their place: ${list(names, 5)}.`] : [];
}

function onlySome(has: readonly boolean[]): string {
  const many = has.filter(Boolean).length;
  return many
    ? `Below are the sheets of the ${count(many, 'picture')} that ${many === 1 ? 'wants' : 'want'} attention.`
    : 'No picture wants attention, so none has a sheet below.';
}

const plate = (shown: Shown): Html =>
  html`<figure class="picture">${'trouble' in shown ? html`<p>${shown.trouble}</p>` : shown.large && image(shown.large, describe(shown.large))}</figure>`;

const describe = ({ fullWidth, fullHeight }: Image) =>
  `The picture, ${fullWidth} × ${fullHeight} pixels, made small`;

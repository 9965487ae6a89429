import bookStyle from '../../../media/book-page.css';
import compareStyle from '../../../media/compare-page.css';
import sheetStyle from '../../../media/sheet.css';
import type { Comparison, PageChange, PictureChange } from '../../shared/comparison';
import type { Finding } from '../../shared/finding';
import { CAUTION } from '../caution';
import { type Html, html } from '../page/html';
import { type Image, image } from '../page/image';
import { mark } from '../page/marks';
import { standalone } from '../page/standalone';
import { printed } from '../page/typography';
import { nameOf } from '../text/blocks';
import { arrangedLines } from './arranged';
import { conditions, forecasts, remarks } from './conditions';
import { settingsLines } from './settings';
import { closing, happened, headline, matched, revisions, setVerdict, stored, tints } from './words';

/** A picture made small, or why it cannot be shown; null: there is none. */
export type Shown = Image | { trouble: string } | null;

/** Finds a picture of one of the two revisions by path and page. */
export type Pictures = (side: 'base' | 'head', path: string, page: number) => Shown;

/** Moves the edge between two pictures. Without it they stand side by side. */
const WIPE =
  "document.documentElement.classList.add('wiped');for(const s of document.querySelectorAll('.slider input'))s.addEventListener('input',()=>s.closest('.wipe').style.setProperty('--at',s.value+'%'));";

/**
 * A comparison as one page for a browser: what the change does, then every changed picture before and after, with its
 * neighbours in the book. Nothing is loaded from anywhere; the one script moves the edge between before and after.
 */
export function comparisonPage(comparison: Comparison, pictures: Pictures): string {
  const title = 'What changed in the book';
  const verdict = setVerdict(comparison);
  const page = html`
<header class="book">
  <h1>${title}</h1>
  <p class="verdict">${headline(comparison)}</p>
  ${settingsLines(comparison).map(line => html`<p>${printed(line)}</p>`)}
  ${verdict && html`<p>${verdict}</p>`}
  <p class="happened">${revisions(comparison)} ${closing(comparison)}</p>
  ${conditions(comparison).map(line => html`<p class="happened">${line}</p>`)}
</header>
<main>
${comparison.changes.map(change => changed(change, pictures))}
<div class="whole">
  ${list(
    'Stand elsewhere, unchanged themselves',
    arrangedLines(comparison).map(line => html`${line}`),
  )}
  ${list('New for the whole book', comparison.book.new.map(finding))}
  ${list('Ended for the whole book', comparison.book.ended.map(finding))}
  ${list(
    'Judged otherwise, though unchanged themselves',
    comparison.others.map(
      ({ path, page, findings }) =>
        html`${nameOf(path, page)}: ${[
          ...findings.new.map(({ rule }) => `new ${rule}`),
          ...findings.ended.map(({ rule }) => `ended ${rule}`),
        ].join(', ')}`,
    ),
  )}
  ${list(
    'To know',
    remarks(comparison).map(notice => html`${printed(notice)}`),
  )}
  ${forecasts(comparison) && html`<p class="remarks">${CAUTION}</p>`}
</div>
</main>`;
  return standalone(title, [bookStyle, sheetStyle, compareStyle], page, WIPE);
}

function changed(change: PictureChange, pictures: Pictures): Html {
  return html`
<section class="change">
  <h2>${change.path}</h2>
  <p class="happened">${happened(change)}</p>
  ${change.pages.map((page, i) => onePage(change, page, pictures, i === 0 && neighbours(change, pictures)))}
</section>`;
}

function onePage(change: PictureChange, page: PageChange, pictures: Pictures, beside: Html | false): Html {
  const { findings } = page;
  const facts = [
    stored(page),
    ...tints(page).map(({ target, words }) => said(words, target, page)),
    ...matched(page).map(({ target, words }) => said(words, target, page)),
  ];
  const before =
    page.before && change.kind !== 'renamed' ? pictures('base', change.from ?? change.path, page.page) : null;
  const after = page.after ? pictures('head', change.path, page.page) : null;
  return html`
  ${change.pages.length > 1 && html`<h3>Page ${page.page}</h3>`}
  ${sides(before, after, nameOf(change.path, page.page))}
  ${beside}
  <ul class="facts">${facts.map(line => html`<li>${line}</li>`)}</ul>
  ${list('New', findings.new.map(finding))}
  ${list(
    'Ended',
    findings.ended.map(({ rule, severity }) => html`${severity} <code>${rule}</code>`),
  )}
  ${findings.unchanged.length > 0 && html`<p class="happened">As before: ${findings.unchanged.map(({ rule }) => rule).join(', ')}</p>`}`;
}

const said = (words: string, target: string | null, { before, after }: PageChange): string =>
  target !== null && ((after ?? before)?.targets.length ?? 0) > 1 ? `${words} (${target})` : words;

/** Both, to be wiped over each other; or the one that there is. */
function sides(before: Shown, after: Shown, name: string): Html {
  if (before && after && !('trouble' in before) && !('trouble' in after))
    return html`
  <div class="sides wipe">
    <div class="over">${plate(before, 'Before', name)}${plate(after, 'After', name)}</div>
    <label class="slider"><span>Before</span><input type="range" min="0" max="100" value="50" aria-label="Edge between before and after: ${name}"/><span>After</span></label>
  </div>`;
  if (!before && !after) return html``;
  return html`<div class="sides">${before && plate(before, 'Before', name)}${after && plate(after, before ? 'After' : 'Now', name)}</div>`;
}

const plate = (shown: NonNullable<Shown>, when: string, name: string): Html =>
  html`<figure>${'trouble' in shown ? html`<p>${shown.trouble}</p>` : image(shown, `${name}, ${when.toLowerCase()}`)}<figcaption>${when}</figcaption></figure>`;

/** What stands before and after it in the book, and on its spread, as they are now. */
function neighbours(
  { kind, path, neighbours: { before, after, beside }, pages }: PictureChange,
  pictures: Pictures,
): Html {
  if (kind === 'deleted' || kind === 'mode') return html``;
  const order = [before, path, after].filter(name => name !== null);
  const others = beside.filter(name => !order.includes(name));
  const page = pages[0]?.page ?? 1;
  const one = (name: string) => {
    const shown = pictures('head', name, name === path ? page : 1);
    const where =
      name === path
        ? html`<strong>${name}</strong>`
        : html`${name}${beside.includes(name) && html`<br/><small>on the same spread</small>`}`;
    return html`<li><figure>${shown && !('trouble' in shown) && image(shown, '')}<figcaption>${where}</figcaption></figure></li>`;
  };
  if (order.length + others.length < 2) return html``;
  return html`<ul class="neighbours" aria-label="Where it stands in the book">${[...order, ...others].map(one)}</ul>`;
}

const finding = ({ rule, severity, message }: Finding): Html =>
  html`${mark(severity)} ${severity} <code>${rule}</code>: ${printed(message)}`;

const list = (title: string, lines: readonly Html[]): Html =>
  html`${lines.length > 0 && html`<section class="remarks" aria-label="${title}"><h3>${title}</h3><ul>${lines.map(line => html`<li>${line}</li>`)}</ul></section>`}`;

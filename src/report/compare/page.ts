import bookStyle from '../../../media/book-page.css';
import compareStyle from '../../../media/compare-page.css';
import sheetStyle from '../../../media/sheet.css';
import type { Comparison, OtherChange, PageChange, PictureChange } from '../../shared/comparison';
import type { Finding } from '../../shared/finding';
import { CAUTION } from '../caution';
import { type Html, html } from '../page/html';
import { image } from '../page/image';
import { mark } from '../page/marks';
import { standalone } from '../page/standalone';
import { printed } from '../page/typography';
import { nameOf } from '../text/blocks';
import { type Around, bookOf } from './around';
import { arrangedLines } from './arranged';
import { conditions, forecasts, remarks } from './conditions';
import { contents } from './contents';
import { differencesOf, figuresAlone } from './differences';
import { headline } from './headline';
import { MOVED, movedTogether } from './moved';
import { apartAtNames } from './named';
import { whyEnded, whyOthers } from './news';
import { setVerdict } from './set';
import { settingsLines } from './settings';
import { type Shown, sides, WIPE } from './sides';
import { rulesOf, WAIVED, waivedLines } from './waived';
import { closing, happened, matched, revisions, stored, tints } from './words';
import { worstFirst } from './worst-first';

/** Finds a picture of one of the two revisions by path and page. */
export type Pictures = (side: 'base' | 'head', path: string, page: number) => Shown;

/**
 * A comparison as one page for a browser: what the change does, then every changed picture before and after, with its
 * neighbours in the book. Nothing is loaded from anywhere; the one script moves the edge between before and after.
 */
export function comparisonPage(
  comparison: Comparison,
  around: Pick<Around, 'place'>,
  pictures: Pictures,
): string {
  const book = bookOf(around);
  const prose = proseOf(comparison);
  const title = book ? `${book}: what changed in the book` : 'What changed in the book';
  const verdict = setVerdict(comparison);
  const { lines: moved, others } = movedTogether(comparison.changes);
  const worst = worstFirst(others, comparison.settings.off);
  const listed = contents(worst, comparison);
  const page = html`
<header class="book">
  <h1>${title}</h1>
  <p class="verdict">${prose(headline(comparison))}</p>
  ${settingsLines(comparison).map(line => html`<p>${prose(line)}</p>`)}
  ${verdict && html`<p>${prose(verdict)}</p>`}
  <p class="happened">${revisions(comparison)} ${closing(comparison)}</p>
  ${conditions(comparison).map(line => html`<p class="happened">${line}</p>`)}
  ${worst.some(({ change }) => change.pages.length > 0) && html`<p class="happened">${AS_FILES} ${figuresAlone(others)}</p>`}
</header>
<main>
${listed}
<div class="whole">
  ${list(WAIVED, waivedLines(comparison).map(prose))}
  ${list(
    MOVED,
    moved.map(line => html`${line}`),
  )}
  ${list(
    'New for the whole book',
    comparison.book.new.map(each => finding(each, prose)),
  )}
  ${list(
    whyOthers(comparison),
    comparison.others.map(each => other(each, comparison, prose)),
    'others',
  )}
  ${list('Stand elsewhere, unchanged themselves', arrangedLines(comparison).map(prose))}
  ${list(
    'Ended for the whole book',
    comparison.book.ended.map(was => html`${finding(was, prose)}${whyEnded(was, comparison)}`),
  )}
  ${list('To know', remarks(comparison).map(prose))}
</div>
${worst.map(({ change, at }) => changed(change, at, listed.text !== '', pictures, comparison, prose))}
${forecasts(comparison) && html`<div class="whole"><p class="remarks">${CAUTION}</p></div>`}
</main>`;
  return standalone(title, [bookStyle, sheetStyle, compareStyle], page, WIPE);
}

/** Words with every name in them marked. */
type Prose = (text: string) => Html;

function proseOf(comparison: Comparison): Prose {
  const apart = apartAtNames(comparison);
  return text =>
    html`${apart(text).map(piece => (piece.isName ? html`<code>${piece.text}</code>` : printed(piece.text)))}`;
}

/** What nobody must take for a print. */
const AS_FILES = 'The pictures are the files, as a screen shows them: they are no forecast.';

const other = ({ path, page, findings }: OtherChange, comparison: Comparison, prose: Prose): Html =>
  html`${prose(nameOf(path, page))}${
    findings.ended.length > 0 &&
    `, ended: ${findings.ended.map(was => was.rule + whyEnded(was, comparison)).join(', ')}`
  }${findings.new.length > 0 && html`<ul>${findings.new.map(each => html`<li>${finding(each, prose)}</li>`)}</ul>`}`;

function changed(
  change: PictureChange,
  at: number,
  isListed: boolean,
  pictures: Pictures,
  comparison: Comparison,
  prose: Prose,
): Html {
  return html`
<section class="change" id="change-${at + 1}">
  <h2>${change.path}</h2>
  <p class="happened">${prose(happened(change))}</p>
  ${isListed && html`<p class="back"><a href="#contents">What changed, worst first</a></p>`}
  ${change.pages.map((page, i) => onePage(change, page, { pictures, comparison, prose }, i === 0 && neighbours(change, pictures)))}
</section>`;
}

function onePage(
  change: PictureChange,
  page: PageChange,
  { pictures, comparison, prose }: { pictures: Pictures; comparison: Comparison; prose: Prose },
  beside: Html | false,
): Html {
  const { findings } = page;
  const facts = [
    ...differencesOf(page, change.bytes).map(({ words }) => words),
    stored(page),
    ...tints(page).map(({ target, words }) => said(words, target, page)),
    ...matched(page).map(({ target, words }) => said(words, target, page)),
  ].filter(Boolean);
  const before =
    page.before && change.kind !== 'renamed' ? pictures('base', change.from ?? change.path, page.page) : null;
  const after = page.after ? pictures('head', change.path, page.page) : null;
  return html`
  ${change.pages.length > 1 && html`<h3>Page ${page.page}</h3>`}
  ${sides(before, after, nameOf(change.path, page.page))}
  ${beside}
  ${facts.length > 0 && html`<ul class="facts">${facts.map(line => html`<li>${line}</li>`)}</ul>`}
  ${list(
    'New',
    findings.new.map(each => finding(each, prose)),
  )}
  ${list(
    'Ended',
    findings.ended.map(was => html`${was.severity} <code>${was.rule}</code>${whyEnded(was, comparison)}`),
  )}
  ${findings.unchanged.length > 0 && html`<p class="happened">As before: ${findings.unchanged.map(({ rule }) => rule).join(', ')}</p>`}
  ${page.waived.length > 0 && html`<p class="happened">Waived: ${rulesOf(page.waived)}</p>`}`;
}

const said = (words: string, target: string | null, { before, after }: PageChange): string =>
  target !== null && ((after ?? before)?.targets.length ?? 0) > 1 ? `${words} (${target})` : words;

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

const finding = ({ rule, severity, message }: Finding, prose: Prose): Html =>
  html`${mark(severity)} ${severity} <code>${rule}</code>: ${prose(message)}`;

const list = (title: string, lines: readonly Html[], id = ''): Html =>
  html`${lines.length > 0 && html`<section class="remarks"${id && html` id="${id}"`} aria-label="${title}"><h3>${title}</h3><ul>${lines.map(line => html`<li>${line}</li>`)}</ul></section>`}`;

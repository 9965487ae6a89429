import bookStyle from '../../../media/book-page.css';
import sheetStyle from '../../../media/sheet.css';
import type { BookReport } from '../../shared/finding';
import type { Raster } from '../../shared/reader-protocol';
import type { Sheet } from '../../shared/sheet';
import { sheetOf } from '../sheet';
import { dutyOf } from '../sheet/advice';
import { begin, verdict } from '../text/begin';
import { type Html, html } from './html';
import { mark } from './marks';
import { orderChoice } from './orders';
import { findings, sheet } from './sheet';
import { lightGreys } from './strip';

/** A picture to look at, made small: sRGB in a file format that browsers know. */
export interface Image extends Pick<Raster, 'fullWidth' | 'fullHeight'> {
  type: 'image/jpeg' | 'image/png';
  bytes: Uint8Array;
}

/** A picture as it is shown, among the others and on its own sheet, or why it cannot be. */
export type Shown = { small: Image; large: Image } | { trouble: string };

/**
 * A book as one page for a browser: what to do first, all pictures on one screen, then a sheet each. Nothing is loaded
 * from anywhere, no script runs. `shown` goes with `report.pictures`, entry by entry.
 */
export function bookPage(title: string, report: BookReport, shown: readonly Shown[]): string {
  const sheets = report.pictures.map(picture => ({
    ...sheetOf(picture, report.findings, { light: null, series: 0 }),
    // said once, for the whole book
    shared: [],
  }));
  const first = begin(report);
  const rule = (id: string) => html`<code>evengrey explain ${id}</code>`;
  const page = html`
<header class="book">
  <h1>${title}</h1>
  <p class="verdict">${verdict(report)}</p>
  ${first && html`<p>${first}</p>`}
</header>
<main>
<nav class="contacts" id="${ALL}" aria-label="All pictures">
  <p>Under each picture: one light grey in ten possible orders. Only these are a forecast; the picture is the file.</p>
  <ol>${sheets.map((of, i) => contact(of, shown[i], i))}</ol>
</nav>
<div class="whole">${findings('For the whole book', report.findings, { rule })}</div>
${sheets.some(of => of.conditions.length) && html`<div class="orders"><div>${orderChoice({ order: 0, seen: 'alone' })}</div></div>`}
${sheets.map(
  (of, i) => html`
<article class="sheet" id="${idOf(i)}">
  ${sheet(of, { picture: plate(shown[i]), pager: onward(report, i), controls: html``, rule, folded: true, id: idOf(i) })}
</article>`,
)}
</main>`;
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'">
<title>${html`${title}`.text}</title>
<style>
${bookStyle}
${sheetStyle}
</style>
</head>
<body>${page.text}
</body>
</html>
`;
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

/** What a picture asks for, in a word or two: its advice without what goes without saying. */
function tag({ kind, title }: Sheet['advice']): Html {
  if (kind === 'send' || kind === 'leave') return html``;
  const word = title.replace(/ (it|the file|the picture|first)(?= |$)/g, '').toLowerCase();
  return html`<b class="tag">${mark(kind)}${word}</b>`;
}

/** A picture among all others: what is to be done with it is told in a word. */
function contact(of: Sheet, shown: Shown, index: number): Html {
  return html`
<li>
  <a href="#${idOf(index)}">
    <span class="frame">${'small' in shown ? image(shown.small, '') : mark('mend')}</span>
    ${of.advice.kind !== 'leave' && of.conditions.length > 0 && lightGreys(of.conditions[0].orders)}
    <span class="what">${tag(of.advice)}<span>${of.path}${of.page > 1 && ` (page ${of.page})`}<small>${of.encoding.id}: ${of.advice.title}</small></span></span>
  </a>
</li>`;
}

const plate = (shown: Shown): Html =>
  html`<figure class="picture">${'large' in shown ? image(shown.large, describe(shown.large)) : html`<p>${shown.trouble}</p>`}</figure>`;

const describe = ({ fullWidth, fullHeight }: Image) =>
  `The picture, ${fullWidth} × ${fullHeight} pixels, made small`;

const image = ({ type, bytes }: Image, alt: string): Html =>
  html`<img alt="${alt}" src="data:${type};base64,${Buffer.from(bytes).toString('base64')}"/>`;

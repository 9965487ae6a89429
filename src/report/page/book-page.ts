import bookStyle from '../../../media/book-page.css';
import sheetStyle from '../../../media/sheet.css';
import type { BookReport, PictureReport } from '../../shared/finding';
import type { Raster } from '../../shared/reader-protocol';
import type { Sheet } from '../../shared/sheet';
import { sheetOf } from '../sheet';
import { begin, verdict } from '../text/begin';
import { type Html, html } from './html';
import { mark } from './marks';
import { orderChoice } from './orders';
import { findings, sheet } from './sheet';

/** A picture as it is shown, among the others and on its own sheet, or why it cannot be. */
export type Shown = { small: Raster; large: Raster } | { trouble: string };

/**
 * A book as one page for a browser: what to do first, all pictures on one screen, then a sheet each. Nothing is loaded
 * from anywhere, no script runs. `shown` goes with `report.pictures`, entry by entry.
 */
export function bookPage(title: string, report: BookReport, shown: readonly Shown[]): string {
  const sheets = report.pictures.map(picture => sheetOf(picture, [], { light: null, series: 0 }));
  const first = begin(report);
  const rule = (id: string) => html`<code>evengrey explain ${id}</code>`;
  const page = html`
<header class="book">
  <h1>${title}</h1>
  <p class="verdict">${verdict(report)}</p>
  ${first && html`<p>${first}</p>`}
</header>
<main>
<nav class="contacts" aria-label="All pictures">
  <ol>${sheets.map((of, i) => contact(of, report.pictures[i], shown[i], i))}</ol>
</nav>
<div class="whole">${findings('For the whole book', report.findings, { rule })}</div>
${sheets.some(of => of.conditions.length) && html`<div class="orders">${orderChoice({ order: 0, seen: 'alone' })}</div>`}
${sheets.map(
  (of, i) => html`
<article class="sheet" id="${idOf(i)}">
  ${sheet(of, { picture: plate(shown[i]), controls: html``, rule, id: idOf(i) })}
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

const idOf = (index: number) => `picture-${index + 1}`;

/** A picture among all others: what to do with it is told by a sign and by words. */
function contact(of: Sheet, { findings }: PictureReport, shown: Shown, index: number): Html {
  const worst = findings.find(({ severity }) => severity !== 'note');
  return html`
<li data-severity="${worst?.severity ?? 'none'}">
  <a href="#${idOf(index)}">
    <span class="frame">${'small' in shown ? image(shown.small, '') : mark(of.advice.kind)}</span>
    <span class="what">${mark(of.advice.kind)}<span>${of.path}${of.page > 1 && ` (page ${of.page})`}<small>${of.encoding.id}: ${of.advice.title}</small></span></span>
  </a>
</li>`;
}

const plate = (shown: Shown): Html =>
  html`<figure class="picture">${'large' in shown ? image(shown.large, describe(shown.large)) : html`<p>${shown.trouble}</p>`}</figure>`;

const describe = ({ fullWidth, fullHeight }: Raster) =>
  `The picture, ${fullWidth} by ${fullHeight} pixels, made small`;

const image = ({ png }: Raster, alt: string): Html =>
  html`<img alt="${alt}" src="data:image/png;base64,${Buffer.from(png).toString('base64')}"/>`;

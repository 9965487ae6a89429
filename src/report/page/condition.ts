// no-unit-test: part of a page that test/report/page/sheet.test.ts reads whole
import type { Condition, Sheet } from '../../shared/sheet';
import { range } from '../chart/range';
import { type Html, html } from './html';
import { orderId, waysSeen } from './orders';
import { half, strip } from './strip';

/** A forecast under one target: what it is for, the possible orders drawn, what to expect in words. */
export function condition(sheet: Sheet, index: number, id: string): Html {
  const of = sheet.conditions[index];
  return html`
<article class="condition" aria-labelledby="${id}">
  <div class="under">
    <h3 id="${id}">${of.process}</h3>
    <p>${of.paper}</p>
    <p>${of.light}</p>
    <p class="basis">${of.basisWords}</p>
    ${toneScale(of)}
  </div>
  <div class="booth" role="group" aria-label="${of.process}: ten possible orders, drawn. The tables below say it in numbers.">
    ${waysSeen.map(seen => html`<p class="way" data-seen="${seen}"><strong>${of.tinted[seen]}</strong></p>`)}
    ${tenOrders(sheet, of)}
    ${oneOrder(sheet, of)}
  </div>
  <div class="expect">
    <p class="tint">${of.expect.tint}</p>
    <p>${of.expect.direction}</p>
    <p>${of.expect.range}</p>
  </div>
</article>`;
}

/** Which tones of the file the print can tell apart, between its deepest black and its paper: what is said of it, drawn. */
const toneScale = ({ tones }: Condition): Html => html`<figure class="tones">${range(tones, false)}</figure>`;

/** The picture's tones from paper down to black, in the file and flush in ten orders. */
const tenOrders = (sheet: Sheet, { orders }: Condition): Html => html`
<div class="ten">
  <div class="own">${strip('column', half(sheet.scale.colours), true)}<span>file</span></div>
  ${orders.map(
    (order, i) =>
      html`<label class="possible" for="${orderId(i)}" data-order="${i}">${waysSeen.map(
        seen =>
          html`<div class="way" data-seen="${seen}">${strip('column', half(order[seen]), true)}<b>${i + 1}</b><span>${order.tint[seen] && 'tint'}</span></div>`,
      )}</label>`,
  )}
</div>`;

/** The chosen order, long, on a common edge with the file: the eye sees a tint best there. */
const oneOrder = (sheet: Sheet, { orders }: Condition): Html => html`
<div class="one">
  ${strip('file', sheet.scale.colours)}
  ${orders.map((order, i) => waysSeen.map(seen => html`<div class="drawn" data-order="${i}" data-seen="${seen}">${strip('strip', order[seen])}</div>`))}
  <div class="ends"><span>paper</span><span>the file above, one possible order below: a forecast</span><span>black</span></div>
</div>`;

/** All conditions side by side, for those who want numbers and for screen readers. Labels that begin with a space are parts of the line above. */
export function figures(conditions: readonly Condition[]): Html {
  return html`
<div class="table" tabindex="0" role="region" aria-label="Forecasts in numbers">
<table>
  <thead><tr><td></td>${conditions.map(c => html`<th scope="col">${c.process}<small>${c.paper}</small><small>${c.light}</small></th>`)}</tr></thead>
  <tbody>
    ${conditions[0].figures.map(
      ([label], i) =>
        html`<tr><th scope="row"${label.startsWith(' ') && html` class="part"`}>${label.trim()}</th>${conditions.map(c => html`<td>${c.figures[i][1]}</td>`)}</tr>`,
    )}
  </tbody>
</table>
</div>`;
}

/** This picture under a target, then what a sound grey picture would do in every encoding. */
export function ways({ process, paper, encodings, own }: Condition, { encoding }: Sheet): Html {
  const row = (name: Html, line: { even: string; black: string; ground: string }) =>
    html`<tr><th scope="row">${name}</th><td>${line.even}</td><td>${line.black}</td><td>${line.ground}</td></tr>`;
  return html`
<div class="table" tabindex="0" role="region" aria-label="Encodings on ${process}">
<table>
  <thead><tr><th scope="col">${process}<small>${paper}</small></th><th scope="col">Even</th><th scope="col">Black L*</th><th scope="col">Ground</th></tr></thead>
  <tbody>
    ${row(html`<strong>this picture</strong><small>${encoding.id}</small>`, own)}
    ${encodings.map(line => row(html`${line.encoding}${line.own && html`<small>stored like this one</small>`}`, line))}
  </tbody>
</table>
</div>`;
}

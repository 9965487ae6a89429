// no-unit-test: part of a page that test/report/page/sheet.test.ts reads whole
import type { Condition, Sheet } from '../../shared/sheet';
import { type Html, html } from './html';
import { orderId, waysSeen } from './orders';
import { patch, strip } from './strip';

/** A forecast under one target: what it is for, the possible orders drawn, what to expect in words. */
export function condition(sheet: Sheet, index: number, id: string): Html {
  const { process, paper, light, basisWords, orders, expect } = sheet.conditions[index];
  return html`
<article class="condition" aria-labelledby="${id}">
  <div class="under">
    <h3 id="${id}">${process}</h3>
    <p>${paper}</p>
    <p>${light}</p>
    <p class="basis">${basisWords}</p>
  </div>
  <div class="booth" role="img" aria-label="${process}, drawn: the file’s greys from paper to black, and below them one possible order. The table below says it in numbers.">
    ${orders.map((order, i) => waysSeen.map(seen => html`<div class="drawn" data-order="${i}" data-seen="${seen}">${strip(sheet.scale, order[seen])}</div>`))}
    <div class="ends"><span>paper</span><span>the file above, one possible order below</span><span>black</span></div>
    <div class="patches">
      ${orders.map(
        (order, i) =>
          html`<label class="possible" for="${orderId(i)}" data-order="${i}">${waysSeen.map(seen => patch(order, seen))}<span>${i + 1}</span></label>`,
      )}
    </div>
    <div class="ends"><span></span><span>one light grey in ten possible orders</span><span></span></div>
  </div>
  <div class="expect">
    <p class="tint">${expect.tint}</p>
    <p>${expect.direction}</p>
    <p>${expect.range}</p>
  </div>
</article>`;
}

/** All conditions side by side, for those who want numbers and for screen readers. */
export function figures(conditions: readonly Condition[]): Html {
  return html`
<div class="table" tabindex="0" role="region" aria-label="Forecasts in numbers">
<table>
  <thead><tr><td></td>${conditions.map(c => html`<th scope="col">${c.process}<small>${c.paper}</small><small>${c.light}</small></th>`)}</tr></thead>
  <tbody>
    ${conditions[0].figures.map(
      ([label], i) =>
        html`<tr><th scope="row">${label}</th>${conditions.map(c => html`<td>${c.figures[i][1]}</td>`)}</tr>`,
    )}
  </tbody>
</table>
</div>`;
}

/** What every encoding would do under a target. */
export function ways({ process, paper, encodings }: Condition): Html {
  return html`
<div class="table" tabindex="0" role="region" aria-label="Encodings on ${process}">
<table>
  <thead><tr><th scope="col">${process}<small>${paper}</small></th><th scope="col">What to do</th><th scope="col">Even</th><th scope="col">Black L*</th><th scope="col">Ground</th></tr></thead>
  <tbody>
    ${encodings.map(
      line =>
        html`<tr><th scope="row">${line.encoding}${line.own && ' (this picture)'}</th><td>${line.act}</td><td>${line.even}</td><td>${line.black}</td><td>${line.ground}</td></tr>`,
    )}
  </tbody>
</table>
</div>`;
}

import assert from 'node:assert/strict';
import { html } from '../../../src/report/page/html';
import { orderChoice } from '../../../src/report/page/orders';
import { CAUTION, sheet } from '../../../src/report/page/sheet';
import { sheetOf } from '../../../src/report/sheet';
import { brokenFacts } from '../../book/support/facts';
import { finding, picture } from '../text/support';

const frame = {
  picture: html`<img alt="it" src="it.png"/>`,
  controls: orderChoice({ order: 3, seen: 'beside' }),
  rule: (id: string) => html`<button data-rule="${id}">${id}</button>`,
  id: 'x',
};
const options = { light: null, series: 0 };
const evil = '<script>alert("x")</script>';
const page = sheet(
  sheetOf(
    picture(`a/${evil}.png`, [finding('untagged', 'note', evil)]),
    [finding('ink-total', 'warning', 'all')],
    options,
  ),
  frame,
).text;

describe('the page of a picture', () => {
  it('lets nothing of a file’s name or a message become markup', () => {
    assert.doesNotMatch(page, /<script/);
    assert.equal(page.match(/&lt;script&gt;/g)?.length, 2);
  });

  it('carries no style and no script of its own, which a strict policy would stop', () => {
    assert.doesNotMatch(page, / style=| on[a-z]+=/);
  });

  it('says what to do before it shows the picture', () => {
    const at = page.indexOf('class="advice"');
    assert.ok(at > 0 && at < page.indexOf('<img'));
  });

  it('warns before it shows a forecast', () => {
    const caution = html`${CAUTION}`.text;
    assert.ok(page.includes(caution));
    assert.ok(page.indexOf(caution) < page.indexOf('class="condition"'));
  });

  it('says in a table what it draws, with headings for rows and columns', () => {
    assert.match(page, /<th scope="col">Offset, coated paper/);
    assert.match(page, /<th scope="row">Direction<\/th>/);
    const drawings = page.match(/<svg[^>]*>/g)!;
    assert.ok(
      drawings.every(tag => tag.includes('aria-hidden="true"')),
      'drawings are left to those who see',
    );
  });

  it('draws which tones can be printed, from the black to the paper of the forecast', () => {
    const of = picture('a.png');
    const [{ range }] = of.forecasts;
    const drawn = sheet(sheetOf(of, [], options), frame).text.match(
      /<figure class="tones">.*?<\/figure>/s,
    )![0];
    const ends = [...drawn.matchAll(/class="small end">(\d+)</g)].map(match => match[1]);
    // then the end of the file's own scale
    assert.deepEqual(ends, [range.white.toFixed(0), range.black.toFixed(0), '100']);
  });

  it('tells what every encoding would do under the target', () => {
    assert.match(page, /aria-label="Encodings on Offset, coated paper"/);
    for (const encoding of ['rgb-neutral', 'single-channel', 'black-only', 'four-channel'])
      assert.match(page, new RegExp(`<th scope="row">${encoding}`));
    assert.match(page, /a book all of whose pictures are stored so/);
  });

  it('gives one advice: tables have figures, and say nothing of what to do', () => {
    const sent = sheet(sheetOf(picture('a.png'), [], options), frame).text;
    assert.match(sent, /<h2>Send it as it is<\/h2>/);
    const tables = sent.slice(sent.indexOf('aria-label="Encodings on'));
    assert.match(tables, /stored like this one/);
    assert.doesNotMatch(tables, /convert to|can be sent|ask the print house/i);
  });

  it('says beside the picture that it is the file, and folds tables away where asked', () => {
    assert.match(page, /The file, as a screen shows it\. It is no forecast/);
    assert.match(page, /<details class="tables" open>/);
    const folded = sheet(sheetOf(picture('a.png'), [], options), { ...frame, folded: true }).text;
    assert.match(folded, /<details class="tables">/);
  });

  it('marks in words the orders that show a tint, as many as it counts', () => {
    const alone = sheetOf(picture('a.png'), [], options).conditions[0].orders.filter(
      o => o.tint.alone,
    ).length;
    const marks = page.match(/data-seen="alone"><svg class="column"[\s\S]*?<\/div>/g)!;
    assert.equal(marks.filter(mark => mark.includes('<span>tint</span>')).length, alone);
    assert.match(page, new RegExp(`A tint is seen in ${alone || 'none'} of these ten`));
  });

  it('starts with the order and the way of seeing that were asked for', () => {
    const checked = [...page.matchAll(/id="([^"]+)" value="[^"]*" checked/g)].map(match => match[1]);
    assert.deepEqual(checked, ['order-3', 'seen-beside']);
  });

  it('has no id twice', () => {
    const ids = [...page.matchAll(/ id="([^"]+)"/g)].map(match => match[1]);
    assert.equal(new Set(ids).size, ids.length);
  });

  it('of a picture that cannot be read shows no forecast', () => {
    const broken = sheet(sheetOf(picture('a.png', [], brokenFacts('empty')), [], options), frame).text;
    assert.doesNotMatch(broken, /How it may print/);
    assert.match(broken, /Put the file right first/);
    assert.match(broken, /class="encoding"/);
  });

  it('says nothing of how a file is stored that is not there', () => {
    const gone = sheet(sheetOf(picture('a.png', [], brokenFacts('missing')), [], options), frame).text;
    assert.match(gone, /Put the file right first/);
    assert.doesNotMatch(gone, /class="encoding"|Unknown format/);
  });
});

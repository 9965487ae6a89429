import assert from 'node:assert/strict';
import { filled, inEnglish } from '../../src/preview/sentence';
import { html } from '../../src/report/page/html';

describe('a sentence with parts of a page in it', () => {
  it('has them where the translation wants them, and is text itself', () => {
    const parts = [html`<b>${'a & b'}</b>`, html`<i>c</i>`];
    assert.equal(filled('{1} <- {0}!', ...parts).text, '<i>c</i> &lt;- <b>a &amp; b</b>!');
    assert.equal(filled('{0}{0}', html`x`).text, 'xx');
    assert.equal(filled('nothing in it').text, 'nothing in it');
  });

  it('says which of them are in English', () => {
    assert.equal(inEnglish('R < G').text, '<span lang="en">R &lt; G</span>');
  });
});

import assert from 'node:assert/strict';
import { Html, html } from '../../../src/report/page/html';

describe('html', () => {
  it('escapes what is put in, in text and in attributes', () => {
    const name = `<img src=x onerror="alert('1')"> & co`;
    assert.equal(
      html`<p title="${name}">${name}</p>`.text,
      '<p title="&lt;img src=x onerror=&quot;alert(&#39;1&#39;)&quot;&gt; &amp; co">' +
        '&lt;img src=x onerror=&quot;alert(&#39;1&#39;)&quot;&gt; &amp; co</p>',
    );
  });

  it('writes out what no eye sees in a name', () => {
    assert.equal(html`${'x\ny\u202e.jpg'}`.text, 'x\\u{a}y\\u{202e}.jpg');
  });

  it('nests, joins lists, and leaves out what is not there', () => {
    const items = ['a', 'b'].map(x => html`<li>${x}</li>`);
    assert.equal(
      html`<ul>${items}${null}${undefined}${false}${0}</ul>`.text,
      '<ul><li>a</li><li>b</li>0</ul>',
    );
    assert.ok(html`x` instanceof Html);
  });
});

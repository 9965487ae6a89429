import assert from 'node:assert/strict';
import { methodsPage } from '../../../src/report/page/methods-page';

const bytes = (...values: number[]) => Uint8Array.from(values);
const page = methodsPage(
  'a <b>.jpg',
  [
    { id: 'lightness', name: 'Lightness', does: 'Keeps <tones>' },
    { id: 'other', name: 'Not shown', does: '' },
  ],
  { width: 2, height: 1, asItIs: bytes(1, 2, 3), grey: [{ id: 'lightness', png: bytes(4, 5, 6) }] },
  method => `convert --method ${method}`,
);

describe('the page of all ways to grey', () => {
  it('holds the picture and every way that was made, with its command', () => {
    assert.equal(page.match(/<li>/g)?.length, 2);
    assert.ok(page.includes('data:image/png;base64,AQID') && page.includes('data:image/png;base64,BAUG'));
    assert.match(
      page,
      /<strong>Lightness<\/strong> Keeps &lt;tones&gt;<code>convert --method lightness<\/code>/,
    );
    assert.doesNotMatch(page, /Not shown/);
  });

  it('loads nothing, runs nothing, and escapes names', () => {
    assert.doesNotMatch(page, /<script|https?:\/\/|<b>\./);
    assert.match(page, /<title>a &lt;b&gt;\.jpg<\/title>/);
    assert.match(page, /default-src 'none'; img-src data:/);
  });
});

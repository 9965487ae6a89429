import assert from 'node:assert/strict';
import { inReadingOrder } from '../../../src/book/layouts/reading-order';

/** `1a 2:b 3c`: a picture at 1, a source taken in at 2, a picture at 3. */
const source = (path: string, text: string) => {
  const found = [...text.matchAll(/(\d+)(:?)(\S+)/g)].map(([, start, colon, name]) => ({
    start: +start,
    colon,
    name,
  }));
  return {
    path,
    items: found.filter(({ colon }) => !colon),
    includes: found.filter(({ colon }) => colon).map(({ start, name }) => ({ start, path: name })),
  };
};
const read = (texts: Record<string, string>, named: string[] | null = null) =>
  inReadingOrder(
    Object.entries(texts).map(([path, text]) => source(path, text)),
    named,
  )
    .map(({ item }) => item.name)
    .join('');

describe('the reading order of layouts', () => {
  it('is theirs in the settings, pattern by pattern, else by name as people count', () => {
    const texts = { '10.md': '1x', '9.md': '1y', 'a.md': '1a 2b' };
    assert.equal(read(texts), 'yxab');
    assert.equal(read(texts, ['a.md', '*.md']), 'abyx');
    assert.equal(read(texts, ['*.md', '!none.md', 'a.md']), 'yxab');
  });

  it('follows what a source takes in at that place, once, whatever its name or pattern is', () => {
    const texts = {
      'a.tex': '1a',
      'book.tex': '1p 2:c.tex 3q 4:a.tex 5r 6:a.tex',
      'c.tex': '1c 2:deep.tex 3d',
      'deep.tex': '1e',
    };
    assert.equal(read(texts), 'pcedqar');
    assert.equal(read(texts, ['a.tex', 'c.tex', '*.tex']), 'pcedqar');
  });

  it('loses nothing in a ring, of sources that take in themselves, or of what is not there', () => {
    assert.equal(read({ 'a.tex': '1a 2:b.tex 3c', 'b.tex': '1b 2:a.tex 3d' }), 'abdc');
    assert.equal(read({ 'b.tex': '1b', 'a.tex': '1:a.tex 2a 3:gone.tex 4c' }), 'acb');
  });
});

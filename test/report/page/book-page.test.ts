import assert from 'node:assert/strict';
import { bookPage, type Shown, sheeted } from '../../../src/report/page/book-page';
import type { Image } from '../../../src/report/page/image';
import { brokenFacts } from '../../book/support/facts';
import { finding, picture, report } from '../text/support';

const image = (bytes: string): Image => ({
  type: 'image/jpeg',
  bytes: Buffer.from(bytes),
  fullWidth: 60,
  fullHeight: 40,
});
const shown: Shown[] = [
  { small: image('small one'), large: image('large one') },
  { trouble: 'The file is cut off.' },
];
const page = bookPage(
  'A <book>',
  report([
    picture('plates/a&b.png', [finding('untagged', 'note', 'No profile: "none".')]),
    picture(
      'plates/c.png',
      [finding('unreadable', 'error', 'Nothing can be said.')],
      brokenFacts('truncated'),
    ),
  ]),
  shown,
);

describe('a book as one page', () => {
  it('shows every picture among the others and on a sheet of its own', () => {
    const [contacts] = page.match(/<nav class="contacts"[\s\S]*?<\/nav>/)!;
    const links = [...contacts.matchAll(/href="#(picture-\d+)"/g)].map(match => match[1]);
    assert.deepEqual(links, ['picture-1', 'picture-2']);
    for (const id of links) assert.ok(page.includes(`<article class="sheet" id="${id}">`));
    for (const part of ['small one', 'large one'])
      assert.ok(page.includes(`src="data:image/jpeg;base64,${Buffer.from(part).toString('base64')}"`));
    assert.ok(page.includes('<p>The file is cut off.</p>'));
  });

  it('has them in the order of the book, each with its own picture, and begins where the report does', () => {
    const ordered = bookPage(
      'A book',
      report([
        { ...picture('a.png', [finding('untagged', 'warning', 'A.')]), position: null },
        { ...picture('b.png', [finding('untagged', 'warning', 'B.')]), position: 2 },
        { ...picture('c.png', [finding('untagged', 'warning', 'C.')]), position: 1 },
      ]),
      ['of a', 'of b', 'of c'].map(bytes => ({ small: image(bytes), large: image(bytes) })),
    );
    const [contacts] = ordered.match(/<nav class="contacts"[\s\S]*?<\/nav>/)!;
    const told = [...contacts.matchAll(/base64,([\w+/=]+)"[\s\S]*?<span>(\w\.png)/g)].map(
      ([, bytes, name]) => `${Buffer.from(bytes, 'base64')}: ${name}`,
    );
    assert.deepEqual(told, ['of c: c.png', 'of b: b.png', 'of a: a.png']);
    assert.match(ordered, /<p>Begin with a\.png: look at it\. /);
    const onward = [...ordered.matchAll(/Next that wants attention: (\w\.png)/g)].map(([, name]) => name);
    assert.deepEqual(onward, ['b.png', 'a.png']);
  });

  it('says first what to do', () => {
    assert.match(
      page,
      /<p class="verdict">1 of 2 pictures wants attention before this book is ordered\.<\/p>/,
    );
    assert.match(page, /<p>Begin with plates\/c\.png: put the file right\./);
    assert.match(page, /<p class="terms">.*<br\/>Written by Evengrey \d+\.\d+\.\d+\.<\/p>/);
  });

  it('escapes names and messages, loads nothing and runs nothing', () => {
    assert.ok(page.includes('<title>A &lt;book&gt;</title>'));
    assert.ok(page.includes('plates/a&amp;b.png') && page.includes('No profile: &quot;none&quot;.'));
    assert.ok(!/<script|<link|https?:\/\/(?!www\.w3)/.test(page));
    assert.match(page, /default-src 'none'; img-src data:; style-src 'unsafe-inline'/);
  });

  it('leads from each sheet to all pictures and to the next that wants attention', () => {
    const leads = [...page.matchAll(/<nav class="onward"[\s\S]*?<\/nav>/g)].map(([nav]) =>
      [...nav.matchAll(/href="#([^"]+)"/g)].map(match => match[1]),
    );
    assert.deepEqual(leads, [['all-pictures', 'picture-2'], ['all-pictures']]);
    assert.ok(page.includes('id="all-pictures"'));
  });

  it('tells in a word what a picture asks for, and draws a grey of it in ten orders', () => {
    const contacts = page.split('<li').slice(1, 3);
    assert.match(contacts[0], /class="ten-greys"/);
    assert.doesNotMatch(contacts[0], /class="tag"/);
    assert.match(contacts[1], /put right<\/b>/);
  });

  it('says how the book is printed, and what was not judged', () => {
    assert.match(
      page,
      /<p class="terms">2 pictures: 1 error, 0 warnings, 1 note\.<br\/>Offset, coated paper; /,
    );
    const colour = bookPage('x', report([picture('d.png', [], { encoding: 'colour' })]), [shown[1]]);
    assert.match(colour, /<h2>To know<\/h2><ul><li>In colour, and not judged, .*: d\.png<\/li>/);
  });

  it('gives a large book’s sheets to those pictures alone that want attention', () => {
    const many = Array.from({ length: 61 }, (_, i) =>
      picture(`${i}.png`, i === 7 ? [finding('residual-chroma', 'warning', 'A mark.')] : []),
    );
    assert.deepEqual(sheeted(report(many.slice(1))), Array(60).fill(true));
    const large = bookPage(
      'x',
      report(many),
      many.map((_, i): Shown => ({ small: image('s'), large: i === 7 ? image('l') : null })),
    );
    assert.deepEqual(large.match(/<article class="sheet" id="[^"]+"/g), [
      '<article class="sheet" id="picture-8"',
    ]);
    assert.match(large, /Below are the sheets of the 1 picture that wants attention\./);
    assert.deepEqual(large.match(/href="#picture-\d+"/g), ['href="#picture-8"', 'href="#picture-8"']);
    assert.match(large, /aria-label="Wanting attention">\s*<a href="#picture-8">7\.png<\/a>/);
    const all = bookPage(
      'x',
      report(many.map(({ path }) => picture(path, [finding('residual-chroma', 'warning', 'A mark.')]))),
      many.map((): Shown => ({ small: image('s'), large: image('l') })),
    );
    const [links] = all.match(/aria-label="Wanting attention">[\s\S]*?<\/nav>/)!;
    assert.deepEqual([links.match(/<a /g)!.length, /and 1 more</.test(links)], [60, true]);
  });

  it('names what it does not show, though it can be read', () => {
    assert.doesNotMatch(page, /Not shown/);
    const other = bookPage('x', report([picture('d.png')]), [{ trouble: 'It is another one now.' }]);
    assert.match(other, /<li>Not shown, for the reason that stands in their place: d\.png\.<\/li>/);
    assert.match(other, /<small>It is another one now\.<\/small>/);
  });

  it('has every id once', () => {
    const ids = [...page.matchAll(/ id="([^"]+)"/g)].map(match => match[1]);
    assert.deepEqual(ids.length, new Set(ids).size);
  });
});

import assert from 'node:assert/strict';
import fs from 'node:fs';
import MarkdownIt from 'markdown-it';
import { bookMarkdown } from '../../../src/report/markdown';
import { AWKWARD } from '../awkward';
import { finding, picture, report } from '../text/support';

const ink = () => [finding('ink-total', 'error', 'Too much.')];
const html = (...args: Parameters<typeof report>) =>
  new MarkdownIt({ html: true }).render(bookMarkdown(report(...args)));

describe('a report as Markdown', () => {
  it('begins with the verdict and the counts', () => {
    const [heading, counts] = html([picture('a.tif', ink())]).split('\n');
    assert.equal(heading, '<h3>Evengrey: 1 of 1 picture wants attention before this book is ordered.</h3>');
    assert.equal(counts, '<p>1 picture: 1 error, 0 warnings, 0 notes.</p>');
  });

  it('says which book it is', () => {
    assert.match(bookMarkdown(report([]), [], 'checked', 'hafen'), /^### Evengrey, hafen: /);
    assert.match(
      bookMarkdown(report([]), [{ message: 'Why.', at: null }], 'checked', 'hafen'),
      /^### Evengrey, hafen: Nothing was checked/,
    );
  });

  it('has one row for all pictures that want the same, worst first, then the most', () => {
    const warn = (path: string) => picture(path, [finding('residual-chroma', 'warning', path)]);
    const tint = picture('t.tif', [finding('likely-tint', 'warning', 't')]);
    const rows = html([tint, ...'abcdefg'.split('').map(warn), picture(AWKWARD, ink())]).match(
      /<tr>[\s\S]*?<\/tr>/g,
    )!;
    assert.equal(rows.length, 4, 'head and three');
    assert.match(rows[1], /error <code>ink-total/);
    assert.match(rows[2], /7: <code>a<\/code>, <code>b<\/code>, <code>c<\/code>, <code>d<\/code> and 3 more/);
    assert.match(rows[3], /<code>t\.tif<\/code>/);
    for (const row of rows) assert.equal(row.match(/<t[hd]>/g)!.length, 4);
  });

  it('names the encoding where rows tell pictures apart by it', () => {
    const odd = (path: string, encoding: 'black-only' | 'four-channel') =>
      picture(path, [finding('mixed-encodings', 'warning', 'It is odd.')], { encoding });
    const rows = html([odd('a.tif', 'black-only'), odd('b.tif', 'four-channel')]).match(
      /<tr>[\s\S]*?<\/tr>/g,
    )!;
    assert.match(rows[1], /<code>a\.tif<\/code>, stored as <code>black-only<\/code><\/td>/);
    assert.match(rows[2], /<code>b\.tif<\/code>, stored as <code>four-channel<\/code><\/td>/);
  });

  it('names in a row what else stands against its pictures, so that one export puts all of it right', () => {
    const cut = finding('low-resolution', 'warning', 'L.');
    const both = [finding('residual-chroma', 'warning', 'R.'), cut, finding('untagged', 'note', 'U.')];
    const [, row] = html([picture('a.tif', both)]).match(/<tr>[\s\S]*?<\/tr>/g)!;
    assert.match(row, /warning <code>residual-chroma<\/code>; also <code>low-resolution<\/code><\/td>/);
  });

  it('says shared causes once, and folds the findings away', () => {
    const told = (path: string) => picture(path, [finding('x', 'warning', `It is so. See ${path}.`)]);
    const page = html([told('a.tif'), told('b.tif')], { findings: [finding('y', 'note', 'All *alike*.')] });
    assert.equal(page.match(/It is so\./g)!.length, 1);
    assert.match(page, /<details>[\s\S]*<code>x<\/code><\/strong>: 2 pictures\. It is so\./);
    assert.match(page, /<li>note <code>y<\/code>: All \*alike\*\.<\/li>[\s\S]*<details>/);
  });

  it('shows a bar in a name as one, in the table and outside of it', () => {
    const page = html([picture('a|b.tif', ink())]);
    assert.equal(page.match(/<code>a\|b\.tif<\/code>/g)!.length, 2);
    assert.doesNotMatch(page, /\\\|/);
  });

  it('says what to do with each where several are in a row, and what fails as what fails', () => {
    const split = {
      ...finding('mixed-encodings', 'error', 'Mixed.'),
      data: { groups: [], convert: ['a.tif', 'b.tif'], save: 'rgb-neutral' },
    };
    const tinted = ['a.tif', 'b.tif'].map(path => picture(path, [finding('likely-tint', 'warning', 'T.')]));
    const alone = picture('c.tif', [finding('low-resolution', 'warning', 'L.')]);
    const [, both, one] = html([...tinted, alone], { findings: [split] }).match(/<tr>[\s\S]*?<\/tr>/g)!;
    assert.match(both, /<strong>Each: convert it<\/strong>[\s\S]*error <code>mixed-encodings<\/code>/);
    assert.match(one, /<strong>[A-Z]\w+ it [^<]*<\/strong>[\s\S]*warning <code>low-resolution<\/code>/);
    assert.doesNotMatch(both + one, / first</);
  });

  it('names every picture of a finding on the book, folded away', () => {
    const names = Array.from({ length: 82 }, (_, i) => `plates/${i}.tif`);
    const split = {
      ...finding('mixed-encodings', 'warning', 'That leaves plates/0.tif and 81 more to convert.'),
      data: { convert: names },
    };
    const [, folded] = html(
      names.map(name => picture(name)),
      { findings: [split] },
    ).split('<details>');
    assert.match(
      folded,
      /All that <code>mixed-encodings<\/code> names for the whole book<\/strong>: 82 pictures\./,
    );
    for (const name of names) assert.ok(folded.includes(`<code>${name}</code>`), name);
  });

  it('says what wrote it, and how a page with the pictures is made', () => {
    const { version } = JSON.parse(fs.readFileSync('package.json', 'utf8'));
    const page = html([picture('a.tif')]);
    assert.match(page, /<code>evengrey check --format html --output report\.html<\/code> makes a page/);
    assert.ok(page.includes(`Written by Evengrey ${version}.`));
  });

  it('stays short, however many pictures there are', () => {
    const many = Array.from({ length: 3000 }, (_, i) =>
      picture(`p${i}.tif`, [finding('ink-total', 'warning', `It is ${i} %.`)]),
    );
    assert.ok(bookMarkdown(report(many)).length < 65536, 'what a comment may hold');
  });

  it('says what to do first where no picture wants anything, and that a forecast is no proof', () => {
    const page = html([picture('a.tif')]);
    assert.match(page, /Have a test print made first\./);
    assert.match(page, /A forecast is no proof/);
    assert.doesNotMatch(page, /<table>|<details>/);
  });
});

import assert from 'node:assert/strict';
import MarkdownIt from 'markdown-it';
import { comparisonMarkdown } from '../../../src/report/compare/markdown';
import { AWKWARD } from '../awkward';
import { finding, picture } from '../text/support';
import { change, comparison, findings, page } from './support';

const around = { place: { folder: '', settings: null }, conditions: [] };
const html = (...of: Parameters<typeof comparison>) =>
  new MarkdownIt({ html: true }).render(comparisonMarkdown(comparison(...of), around));
const bad = (path: string) =>
  page(null, picture(path), {
    findings: findings({ new: [finding('x', 'warning', `It is so. See ${path}.`)] }),
  });

const waivedOn = (path: string) => page(null, picture(path), { waived: [finding('x', 'warning', '')] });

describe('a comparison as Markdown', () => {
  it('is a row a picture, whatever it is called', () => {
    const page = html([change('added', AWKWARD, [bad(AWKWARD)]), change('mode', 'b.tif', [])]);
    const rows = page.match(/<tr>[\s\S]*?<\/tr>/g)!;
    assert.equal(rows.length, 3);
    for (const row of rows) assert.equal(row.match(/<t[hd]>/g)!.length, 4, row);
    assert.match(rows[1], /warning <code>x<\/code>/);
    assert.ok(!/<(script|img|a)\b/i.test(page));
  });

  it('begins with what is new, and folds the way out away', () => {
    const page = html([change('added', 'a.tif', [bad('a.tif')]), change('added', 'b.tif', [bad('b.tif')])]);
    assert.match(page, /^<h3>Evengrey: 2 new warnings\. 2 pictures: 2 new\.<\/h3>/);
    assert.equal(page.match(/It is so\./g)!.length, 1);
    assert.match(
      page,
      /<details>[\s\S]*<li><code>a\.tif<\/code>: See <code>a\.tif<\/code>\.<\/li>[\s\S]*<\/details>/,
    );
  });

  it('says of a picture what is waived against it', () => {
    const page = html([change('added', 'a.tif', [waivedOn('a.tif')])]);
    assert.match(page, /<td>waived: warning <code>x<\/code><\/td>/);
  });

  it('names all pictures of a finding whose message names the first of them', () => {
    const names = ['a.tif', 'b.tif', 'c.tif', 'd.tif'];
    const message = 'They are a.tif, b.tif, c.tif and 1 more.';
    const shared = { ...finding('x', 'warning', message), data: { pictures: names } };
    const page = html([], { book: findings({ new: [shared] }) });
    assert.match(page, /<li>All 4: (<code>[a-d]\.tif<\/code>(, )?){4}<\/li>/);
  });

  it('has every name in a sentence as code, whatever it is called', () => {
    const placed = { neighbours: { before: 'b*c*.tif', after: null, beside: [] } };
    const page = html([
      change('added', AWKWARD, [bad(AWKWARD)], placed),
      change('added', 'x_y_.tif', [bad('x_y_.tif')], {
        neighbours: { before: null, after: AWKWARD, beside: [] },
      }),
    ]);
    assert.match(page, /<td>new, next to <code>b\*c\*\.tif<\/code><\/td>/);
    assert.match(page, /See <code>x_y_\.tif<\/code>\./);
    assert.ok(!/<(em|strong|script|img|a)\b/i.test(page.replace(/<strong>New warning/g, '')));
  });

  it('says what is otherwise in a picture itself', () => {
    const [before, after] = ['1', '2'].map(sha256 => picture('a.tif', [], { sha256 }));
    after.facts.width = 90;
    const row = html([change('changed', 'a.tif', [page(before, after)])]).match(/<tr>[\s\S]*?<\/tr>/g)![1];
    assert.match(
      row,
      /<td>changed<br>60 × 40, now 90 × 40 pixels, another shape: cut, or another picture<\/td>/,
    );
  });

  it('has the worst first, and what speaks against a picture beside its name', () => {
    const fine = change('added', 'a.tif', [page(null, picture('a.tif'))]);
    const apart = bad('b.tif');
    apart.matches = [
      { target: 'book', verdict: 'differs', rules: ['x'], waived: false, distance: null, probability: null },
    ];
    const [, row, last] = html([fine, change('added', 'b.tif', [apart])]).match(/<tr>[\s\S]*?<\/tr>/g)!;
    assert.match(
      row,
      /<code>b\.tif<\/code><\/td>\s*<td>warning <code>x<\/code><br>does not match the book \(x\)<\/td>/,
    );
    assert.match(last, /<code>a\.tif<\/code>/);
  });

  it('tells in a line what moved to another folder together', () => {
    const moved = ['1', '2', '3'].map(name =>
      change('renamed', `b/${name}`, [page(picture(`a/${name}`), picture(`b/${name}`))], {
        from: `a/${name}`,
      }),
    );
    const told = html(moved);
    assert.match(told, /<li>3 pictures moved from a\/ to b\/<\/li>/);
    assert.ok(!told.includes('<table>'));
  });

  it('says how to look at the pictures, where there are any to see', () => {
    const look =
      'npx --no-install evengrey compare aaaaaaaaaa bbbbbbbbbb --no-merge-base --whole --format html --output review.html';
    assert.ok(html([change('added', 'a.tif', [bad('a.tif')])]).includes(`<code>${look}</code>`));
    assert.ok(!html([change('mode', 'a.tif', [])]).includes('review.html'));
  });

  it('says which book it is', () => {
    const text = comparisonMarkdown(comparison([]), {
      ...around,
      place: { folder: 'ha_fen/', settings: null },
    });
    assert.match(text, /^### Evengrey, ha\\_fen: Nothing new stands against printing\./);
  });

  it('lists what the change itself waives, by picture, rule and reason', () => {
    const told = html([], {
      waived: [{ path: 'a.tif', page: 1, finding: { ...finding('x', 'warning', ''), reason: '<b>So</b>' } }],
    });
    assert.match(told, /^<h3>Evengrey: 1 finding is waived by this change\./);
    assert.match(
      told,
      /Waived by this change[\s\S]*<li><code>a\.tif<\/code>: warning x, because: &lt;b&gt;So/,
    );
  });

  it('stays short enough for a comment, however many pictures changed', () => {
    const many = Array.from({ length: 2000 }, (_, i) => change('added', `${i}.tif`, [bad(`${i}.tif`)]));
    const text = comparisonMarkdown(comparison(many), around);
    assert.ok(text.length < 65536, String(text.length));
    assert.match(text, /\| and 1940 more \|/);
  });
});

import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { comparisonPage, type Pictures } from '../../../src/report/compare/page';
import { AWKWARD } from '../awkward';
import { finding, picture } from '../text/support';
import { change, comparison, findings, page } from './support';

const shown: Pictures = (side, path) =>
  path.startsWith('broken')
    ? { trouble: 'It is cut off.' }
    : { type: 'image/jpeg', bytes: Buffer.from(`${side} ${path}`), fullWidth: 6, fullHeight: 4 };
const source = (text: string) => `src="data:image/jpeg;base64,${Buffer.from(text).toString('base64')}"`;
const around = { place: { folder: 'hafen/', settings: null } };
const write = (...of: Parameters<typeof comparison>) => comparisonPage(comparison(...of), around, shown);
const both = (path: string) => page(picture(path), picture(path));

describe('a comparison as a page', () => {
  it('wipes a changed picture over what it was, and shows the one that there is of others', () => {
    const changed = write([change('changed', 'a.tif', [both('a.tif')])]);
    assert.match(changed, /class="sides wipe"[\s\S]*<input type="range"/);
    assert.ok(changed.includes(source('base a.tif')) && changed.includes(source('head a.tif')));
    const added = write([change('added', 'b.tif', [page(null, picture('b.tif'))])]);
    assert.ok(
      !added.includes('<input') &&
        !added.includes(source('base b.tif')) &&
        added.includes(source('head b.tif')),
    );
    const gone = write([change('deleted', 'c.tif', [page(picture('c.tif'), null)])]);
    assert.ok(gone.includes(source('base c.tif')) && !gone.includes(source('head c.tif')));
    const renamed = write([change('renamed', 'd.tif', [both('d.tif')], { from: 'old.tif' })]);
    assert.ok(!renamed.includes(source('base old.tif')), 'of one content one picture');
  });

  it('says that it shows files, which are no forecast, where it shows any', () => {
    const told = 'The pictures are the files, as a screen shows them: they are no forecast.';
    assert.ok(write([change('changed', 'a.tif', [both('a.tif')])]).includes(told));
    assert.ok(!write([]).includes(told));
  });

  it('says which book it is', () => {
    const told = write([]);
    assert.ok(told.includes('<title>hafen: what changed in the book</title>'));
    assert.ok(told.includes('<h1>hafen: what changed in the book</h1>'));
  });

  it('lists what the change itself waives, by picture, rule and reason', () => {
    const told = write([], {
      waived: [{ path: 'a.tif', page: 1, finding: { ...finding('x', 'warning', ''), reason: 'As agreed' } }],
    });
    assert.match(
      told,
      /<h3>Waived by this change<\/h3><ul><li><code>a\.tif<\/code>: warning x, because: As agreed<\/li>/,
    );
  });

  it('says of a picture what is waived against it', () => {
    const told = write([
      change('added', 'a.tif', [page(null, picture('a.tif'), { waived: [finding('x', 'warning', '')] })]),
    ]);
    assert.ok(told.includes('<p class="happened">Waived: warning x</p>'));
  });

  it('tells in a line what moved to another folder together', () => {
    const told = write(
      ['1', '2', '3'].map(name => change('renamed', `b/${name}`, [both(`b/${name}`)], { from: `a/${name}` })),
    );
    assert.match(told, /<li>3 pictures moved from a\/ to b\/<\/li>/);
    assert.ok(!/<section class="change"|<nav class="contents"/.test(told));
  });

  it('shows it between its neighbours', () => {
    const told = write([
      change('added', 'b.tif', [page(null, picture('b.tif'))], {
        neighbours: { before: 'a.tif', after: 'c.tif', beside: ['c.tif', 'd.tif'] },
      }),
    ]);
    const [strip] = told.match(/<ul class="neighbours"[\s\S]*?<\/ul>/)!;
    const order = [...strip.matchAll(/head (\w)\.tif|base64,([^"]+)"/g)].map(m =>
      Buffer.from(m[2], 'base64').toString(),
    );
    assert.deepEqual(order, ['head a.tif', 'head b.tif', 'head c.tif', 'head d.tif']);
    assert.equal(strip.match(/on the same spread/g)!.length, 2);
  });

  it('says what cannot be shown, and escapes every name and message', () => {
    const odd = page(null, picture(AWKWARD), {
      findings: findings({ new: [finding('x', 'warning', '<b>Odd</b>')] }),
    });
    const told = write([
      change('changed', 'broken.tif', [both('broken.tif')]),
      change('added', AWKWARD, [odd]),
    ]);
    assert.ok(told.includes('<p>It is cut off.</p>') && !told.includes('<b>Odd'));
    assert.equal(told.match(/<script/g)!.length, 1);
  });

  it('loads nothing, and runs nothing but its own script', () => {
    const told = write([change('changed', 'a.tif', [both('a.tif')])]);
    const [, script] = told.match(/<script>([\s\S]*)<\/script>/)!;
    const hash = createHash('sha256').update(script).digest('base64');
    assert.ok(
      told.includes(
        `default-src 'none'; img-src data:; style-src 'unsafe-inline'; script-src 'sha256-${hash}'"`,
      ),
    );
    assert.ok(!/<link|https?:\/\/(?!www\.w3)/.test(told));
  });

  it('begins with what changed, worst first, by links to where it stands', () => {
    const told = write(
      [
        change('changed', 'a.tif', [both('a.tif')]),
        change('changed', 'b.tif', [
          page(picture('b.tif'), picture('b.tif'), {
            findings: findings({ new: [finding('x', 'warning', '')] }),
          }),
        ]),
        change('added', 'c.tif', [
          page(null, picture('c.tif'), { findings: findings({ new: [finding('y', 'error', '')] }) }),
        ]),
      ],
      {
        others: [
          {
            path: 'o.tif',
            page: 1,
            findings: findings({ new: [finding('z', 'error', 'Why, and the way out.')] }),
          },
        ],
      },
    );
    const [contents] = told.match(/<nav class="contents"[\s\S]*?<\/nav>/)!;
    assert.deepEqual(
      [...contents.matchAll(/href="#([^"]*)"/g)].map(([, id]) => id),
      ['others', 'change-3', 'change-2', 'change-1'],
    );
    const stays = page(picture('s.tif'), picture('s.tif'), {
      findings: findings({ unchanged: [finding('w', 'error', '')] }),
    });
    const standing = write([
      change('changed', 'a.tif', [both('a.tif')]),
      change('changed', 's.tif', [stays]),
    ]);
    assert.match(
      standing,
      />s\.tif<\/a>: as before: 1 finding stays \(error w\)<\/li><li>[\s\S]*>a\.tif<\/a>: as before/,
    );
    const larger = page(
      picture('b.tif', [], { sha256: '1' }),
      picture('b.tif', [], { sha256: '2', width: 90 }),
    );
    assert.match(
      write([change('changed', 'a.tif', [both('a.tif')]), change('changed', 'b.tif', [larger])]),
      /no error or warning; 60 × 40, now 90 × 40 pixels, another shape: cut, or another picture<\/li>/,
    );
    assert.deepEqual(
      [...told.matchAll(/<section class="change" id="([^"]*)"/g)].map(([, id]) => id),
      ['change-3', 'change-2', 'change-1'],
      'in the order of the list',
    );
    assert.equal(told.match(/<a href="#contents">/g)!.length, 3, 'and back to it');
    assert.ok(told.includes('<nav class="contents" id="contents"'));
    assert.ok(!write([]).includes('#contents'));
    for (const id of ['others', 'change-1', 'change-2', 'change-3'])
      assert.ok(told.includes(` id="${id}"`), id);
    assert.match(contents, />c\.tif<\/a>: new, with 1 finding against it \(error y\)/);
    assert.ok(told.indexOf('Why, and the way out.') < told.indexOf('<section class="change"'));
    const one = write([change('changed', 's.tif', [stays])]);
    assert.match(one, /class="contents"[\s\S]*>s\.tif<\/a>: as before: 1 finding stays \(error w\)/);
  });
});

import assert from 'node:assert/strict';
import { defaultTarget } from '../../../src/print';
import { overviewOf } from '../../../src/report/overview';
import { contactDrawings, contactGreys } from '../../../src/report/sheet/contact';
import type { Finding } from '../../../src/shared/finding';
import type { FacetId, Overview } from '../../../src/shared/overview';
import { finding, picture, report, target } from '../text/support';

const stain = finding('residual-chroma', 'warning', 'A stain.');
const mixed: Finding = {
  ...finding('mixed-encodings', 'warning', 'They differ.'),
  data: { target: target.name, pictures: ['b.tif', 'c.tif'], convert: ['c.tif'] },
};

const counts = ({ facets }: Overview, id: FacetId) =>
  facets.find(facet => facet.id === id)?.values.map(({ name, count }) => [name, count]);

describe('a book on one screen', () => {
  it('counts what to do, and says nothing of what nobody has but what is always asked', () => {
    const seen = overviewOf(report([picture('a.tif', [stain]), picture('b.tif')]), []);
    assert.deepEqual(counts(seen, 'doing'), [
      ['send', 1],
      ['fix', 1],
      ['ask the house', 0],
    ]);
    assert.match(seen.verdict, /^1 of 2 pictures wants attention/);
    assert.deepEqual(
      seen.facets.map(({ id }) => id),
      ['doing', 'rule', 'encoding'],
    );
  });

  it('counts findings worst first, those of the book by the pictures that they ask to be changed', () => {
    const bad = finding('unreadable', 'error', 'Cut off.');
    const seen = overviewOf(
      report([picture('a.tif', [stain]), picture('b.tif', [stain, bad]), picture('c.tif')], {
        findings: [mixed],
      }),
      [],
    );
    assert.deepEqual(counts(seen, 'rule'), [
      ['unreadable', 1],
      ['mixed-encodings', 1],
      ['residual-chroma', 2],
    ]);
    assert.deepEqual(
      seen.pictures.map(({ has }) => has.rule),
      [['residual-chroma'], ['residual-chroma', 'unreadable'], ['mixed-encodings']],
    );
  });

  it('marks those that will be seen among the others', () => {
    const beside = finding('facing-difference', 'warning', 'It differs.');
    const seen = overviewOf(
      report([picture('a.tif'), picture('b.tif', [beside]), picture('c.tif')], {
        findings: [mixed],
      }),
      [],
    );
    assert.deepEqual(
      seen.pictures.map(({ outlier }) => outlier),
      [null, 'unlike its facing page', 'stored unlike others'],
    );
  });

  it('has the book’s order, what faces each other together, and the pages of a file in turn', () => {
    const positions = { '10.tif': 4, '2.tif': 2, '3.tif': 3, '4.tif': 1, '9.tif': null, 'x10.tif': null };
    const pages = [picture('two.tif'), picture('two.tif', [], { page: 2 })];
    const seen = overviewOf(
      report([
        ...Object.entries(positions).map(([name, position]) => ({ ...picture(name), position })),
        ...pages.map(page => ({ ...page, position: 5 })),
        { ...picture('x9.tif'), position: null },
      ]),
      [
        ['4.tif', '2.tif'],
        ['2.tif', '3.tif'],
        ['gone.tif', '10.tif'],
      ],
    );
    const shown = seen.spreads.map(spread =>
      spread.map(i => `${seen.pictures[i].path}${seen.pictures[i].page > 1 ? ' 2' : ''}`),
    );
    assert.deepEqual(shown, [
      ...[['4.tif', '2.tif'], ['3.tif'], ['10.tif'], ['two.tif', 'two.tif 2']],
      ...[['9.tif'], ['x9.tif'], ['x10.tif']],
    ]);
  });

  it('tells parts and targets apart where there are several', () => {
    const cover = defaultTarget('inkjet');
    const own = { ...picture('a.tif'), part: null };
    const of = { ...picture('b.tif'), part: 'cover', targets: [{ ...cover, name: 'outside' }, target] };
    const seen = overviewOf(report([own, of, of], { targets: [target, { ...cover, name: 'outside' }] }), []);
    assert.deepEqual(counts(seen, 'part'), [
      ['cover', 2],
      ['in no part', 1],
    ]);
    assert.deepEqual(
      counts(seen, 'target')?.map(([, count]) => count),
      [3, 2],
    );
    assert.match(String(counts(seen, 'target')?.[1][0]), /^outside \(.*[Ii]nkjet/);
  });

  it('draws the same order for pictures that print alike, and none where nothing is judged', () => {
    const send = { kind: 'send', title: '', tag: '', reason: '' } as const;
    const [a, b, dark] = [picture('a.tif'), picture('b.tif'), { ...picture('c.tif'), forecasts: [] }];
    const drawn = contactDrawings(a, send)!;
    assert.equal(drawn.length, 3);
    assert.deepEqual(drawn, contactDrawings(b, send));
    assert.notDeepEqual(drawn[0], drawn[1]);
    assert.equal(contactGreys(a, send).length, 10);
    assert.deepEqual([contactDrawings(dark, send), contactGreys(dark, send)], [null, []]);
    const leave = { ...send, kind: 'leave' } as const;
    assert.deepEqual([contactDrawings(a, leave), contactGreys(a, leave)], [null, []]);
  });
});

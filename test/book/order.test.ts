import assert from 'node:assert/strict';
import { inOrder, pagesInOrder, placesIn, positionsIn } from '../../src/book/order';

const arranged = (spreads: string[][], placed: string[] = [], styled: string[] = []) => ({
  spreads,
  placements: new Map([
    ...placed.map(path => [path, [{}]] as const),
    ...styled.map(path => [path, [{ inStyleSheet: true as const }]] as const),
  ]),
});

describe('the order of a book', () => {
  it('is that of its spreads, then names as people count', () => {
    assert.deepEqual(inOrder(['10.tif', '2.tif', 'a.tif', '1b.tif', '1.tif', '1a.tif'], arranged([])), [
      '1.tif',
      '1a.tif',
      '1b.tif',
      '2.tif',
      '10.tif',
      'a.tif',
    ]);
    const spreads = [['3.tif', 'gone.tif', '1.tif'], ['6.tif']];
    assert.deepEqual(
      inOrder(['0.tif', '1.tif', '2.tif', '3.tif', '5.tif', '6.tif', '7.tif'], arranged(spreads)),
      [...['0.tif', '3.tif', '1.tif', '2.tif', '5.tif', '6.tif', '7.tif']],
    );
  });

  it('is that of the layouts, then names; a style sheet gives none', () => {
    const placed = arranged([], ['z.tif', 'gone.tif', 'a.tif'], ['9.tif', '10.tif']);
    const paths = ['10.tif', '9.tif', 'a.tif', 'b.tif', 'z.tif'];
    assert.deepEqual(inOrder(paths, placed), ['z.tif', 'a.tif', '9.tif', '10.tif', 'b.tif']);
    assert.deepEqual(inOrder(['b', 'a'], arranged([], ['elsewhere'], ['b'])), ['a', 'b']);
  });

  it('has spreads first, which take along what layouts place behind them', () => {
    const both = arranged([['c', 'a'], ['unplaced']], ['x', 'a', 'b', 'c', 'd']);
    assert.deepEqual(inOrder(['a', 'b', 'c', 'd', 'e', 'unplaced', 'x'], both), [
      ...['x', 'c', 'a', 'b', 'd', 'unplaced', 'e'],
    ]);
  });

  it('has a picture of several spreads in the first of them', () => {
    const twice = arranged(
      [
        ['b', 'd'],
        ['c', 'b', 'a'],
      ],
      ['a', 'b', 'c', 'd'],
    );
    assert.deepEqual(inOrder(['a', 'b', 'c', 'd', 'e'], twice), ['b', 'd', 'c', 'a', 'e']);
    assert.deepEqual(placesIn(['a', 'b', 'c', 'd'], twice, () => null)('b').beside, ['d']);
    const named = arranged(
      [
        ['a', 'c'],
        ['a', 'd'],
      ],
      ['b'],
    );
    assert.deepEqual(inOrder(['a', 'b', 'c', 'd', 'e'], { ...named, placements: new Map() }), [
      ...['a', 'c', 'b', 'd', 'e'],
    ]);
  });

  it('numbers what it places, and nothing that goes by its name alone', () => {
    const numbers = (paths: string[], of: ReturnType<typeof arranged>) => [...positionsIn(paths, of)];
    assert.deepEqual(numbers(['a', 'b', 'c'], arranged([], ['c', 'a'], ['b'])), [
      ['c', 1],
      ['a', 2],
    ]);
    assert.deepEqual(numbers(['a', 'b', 'c', 'd'], arranged([['d', 'b']], ['c'])), [
      ['c', 1],
      ['d', 2],
      ['b', 3],
    ]);
    // between spreads names are all there is
    assert.deepEqual(numbers(['a', 'b', 'c'], arranged([['c', 'a']])), [
      ['c', 1],
      ['a', 2],
      ['b', 3],
    ]);
    assert.deepEqual(numbers(['a', 'b'], arranged([['gone', 'too']], ['gone'])), []);
  });

  it('is read from the numbers again', () => {
    const paths = ['10', '9', 'a', 'b', 'c', 'd'];
    for (const of of [
      arranged([]),
      arranged([['d', '9']]),
      arranged([['d', '9']], ['c', 'a']),
      arranged([], ['c', 'a']),
    ]) {
      const positions = positionsIn(paths, of);
      const pages = paths.map(path => ({ path, position: positions.get(path) ?? null }));
      assert.deepEqual(
        pagesInOrder(pages).map(({ path }) => path),
        inOrder(paths, of),
      );
    }
  });

  it('gives a picture its neighbours, of its own group alone, and what is beside it', () => {
    const spreads = [['cover.tif'], ['1.tif', '2.tif']];
    const place = placesIn(['cover.tif', '1.tif', '2.tif', '3.tif'], arranged(spreads), path =>
      path === 'cover.tif' ? 'cover' : null,
    );
    assert.deepEqual(place('1.tif'), { before: null, after: '2.tif', beside: ['2.tif'] });
    assert.deepEqual(place('2.tif'), { before: '1.tif', after: '3.tif', beside: ['1.tif'] });
    assert.deepEqual(place('gone.tif'), { before: null, after: null, beside: [] });
    const laidOut = placesIn(
      ['1.tif', '2.tif', '3.tif'],
      arranged([], ['3.tif', '1.tif', '2.tif']),
      () => null,
    );
    assert.deepEqual(laidOut('1.tif'), { before: '3.tif', after: '2.tif', beside: [] });
  });
});

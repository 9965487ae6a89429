import assert from 'node:assert/strict';
import { inOrder, placesIn } from '../../src/book/order';

describe('the order of a book', () => {
  it('is that of its spreads, then names as people count', () => {
    assert.deepEqual(inOrder(['10.tif', '2.tif', 'a.tif', '1b.tif', '1.tif', '1a.tif'], []), [
      '1.tif',
      '1a.tif',
      '1b.tif',
      '2.tif',
      '10.tif',
      'a.tif',
    ]);
    const spreads = [['3.tif', 'gone.tif', '1.tif'], ['6.tif']];
    assert.deepEqual(inOrder(['0.tif', '1.tif', '2.tif', '3.tif', '5.tif', '6.tif', '7.tif'], spreads), [
      ...['0.tif', '3.tif', '1.tif', '2.tif', '5.tif', '6.tif', '7.tif'],
    ]);
  });
  it('gives a picture its neighbours, of its own group alone, and what is beside it', () => {
    const spreads = [['cover.tif'], ['1.tif', '2.tif']];
    const place = placesIn(['cover.tif', '1.tif', '2.tif', '3.tif'], spreads, path =>
      path === 'cover.tif' ? 'cover' : null,
    );
    assert.deepEqual(place('1.tif'), { before: null, after: '2.tif', beside: ['2.tif'] });
    assert.deepEqual(place('2.tif'), { before: '1.tif', after: '3.tif', beside: ['1.tif'] });
    assert.deepEqual(place('gone.tif'), { before: null, after: null, beside: [] });
  });
});

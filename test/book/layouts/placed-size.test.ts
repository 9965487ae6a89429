import assert from 'node:assert/strict';
import { largestPlaced } from '../../../src/book/layouts/placed-size';
import { greyFacts } from '../support/facts';

const facts = greyFacts('0', { width: 600, height: 400, ppi: { x: 300, y: 300 } });

describe('the size at which layouts place a picture', () => {
  it('is the largest of several', () => {
    assert.deepEqual(largestPlaced([{ width: 50 }, { height: 60 }, { width: 80 }], facts), { height: 60 });
    assert.deepEqual(largestPlaced([{ width: 50, height: 90 }, { width: 100 }], facts), {
      width: 50,
      height: 90,
    });
    assert.equal(largestPlaced([], facts), null);
  });

  it('is the edge that binds where the picture fits between two', () => {
    assert.deepEqual(largestPlaced([{ width: 60, height: 100, fits: true }], facts), { width: 60 });
    assert.deepEqual(largestPlaced([{ width: 100, height: 20, fits: true }], facts), { height: 20 });
  });

  it('counts as the picture is seen', () => {
    const lying = { ...facts, orientation: 6 };
    assert.deepEqual(largestPlaced([{ width: 60, height: 100, fits: true }], lying), { width: 60 });
    assert.deepEqual(largestPlaced([{ width: 60, height: 80, fits: true }], lying), { height: 80 });
  });

  it('is that of its own ppi where the layout says a scale', () => {
    assert.deepEqual(largestPlaced([{ scale: 0.5 }], facts), { width: 25.4 });
    assert.equal(largestPlaced([{ scale: 0.5 }], { ...facts, ppi: null }), null);
  });
});

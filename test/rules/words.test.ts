import assert from 'node:assert/strict';
import {
  count,
  encodingName,
  inOrders,
  inOrdersOfMany,
  leanName,
  list,
  millimetres,
  mostly,
  percent,
} from '../../src/rules/words';

describe('words', () => {
  it('says a probability in orders of ten, and never that it is certain', () => {
    assert.equal(inOrders(0.43), 'in about 4 orders of 10');
    assert.equal(inOrders(0.08), 'in about 1 order of 10');
    assert.equal(inOrders(0.04), 'in fewer than 1 order of 20');
    assert.equal(inOrders(0.999), 'in nearly every order');
  });
  it('says the mean of several probabilities, and from where to where they go', () => {
    assert.equal(inOrdersOfMany([0.4]), 'in about 4 orders of 10');
    assert.equal(inOrdersOfMany([0.38, 0.44]), 'in about 4 orders of 10', 'no difference that can be told');
    assert.equal(
      inOrdersOfMany([0.1, 0.5, 0.5]),
      'on average in about 4 orders of 10 (from 1 to 5, by picture)',
    );
    assert.equal(
      inOrdersOfMany([0.01, 0.999]),
      'on average in about 5 orders of 10 (from fewer than 1 to nearly every one, by picture)',
    );
  });
  it('says a direction as sure as it is, and both names near their boundary', () => {
    const lean = (probability: number) => ({ direction: 'warm', also: null, probability }) as const;
    assert.deepEqual([0.55, 0.8, 0.9999].map(lean).map(mostly), [
      'more often than not',
      'mostly',
      'nearly always',
    ]);
    assert.equal(leanName(lean(0.6)), 'warm');
    assert.equal(leanName({ ...lean(0.9), also: 'pinkish' }), 'warm to pinkish');
  });
  it('lists names up to a number', () => {
    assert.equal(list(['a']), 'a');
    assert.equal(list(['a', 'b']), 'a and b');
    assert.equal(list(['a', 'b', 'c']), 'a, b and c');
    assert.equal(list(['a', 'b', 'c', 'd', 'e']), 'a, b, c and 2 more');
  });
  it('never calls a little nothing', () => {
    assert.equal(percent(0.001), 'less than 1 %');
    assert.equal(percent(0.126), '13 %');
    assert.equal(millimetres(0.04), 'less than 0.1 mm');
    assert.equal(millimetres(2.54), '2.5 mm');
    assert.equal(millimetres(12.7), '13 mm');
  });
  it('counts', () => {
    assert.equal(count(1, 'picture'), '1 picture');
    assert.equal(count(2, 'picture'), '2 pictures');
  });
  it('keeps the id of an encoding beside its meaning', () =>
    assert.equal(encodingName('black-only'), 'black-only (black ink alone)'));
});

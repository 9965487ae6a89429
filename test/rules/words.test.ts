import assert from 'node:assert/strict';
import { count, encodingName, inOrders, list, millimetres, percent } from '../../src/rules/words';

describe('words', () => {
  it('says a probability in orders of ten, and never that it is certain', () => {
    assert.equal(inOrders(0.43), 'in about 4 orders of 10');
    assert.equal(inOrders(0.08), 'in about 1 order of 10');
    assert.equal(inOrders(0.04), 'in fewer than 1 order of 20');
    assert.equal(inOrders(0.999), 'in nearly every order');
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

import assert from 'node:assert/strict';
import { apartOnTargets, towards } from '../../src/rules/apart';
import { picture, target } from './support/pictures';

const [edition, dummy] = [target('offset-coated', { name: 'edition' }), target('inkjet', { name: 'dummy' })];
const difference = (a: number, b: number) => ({
  difference: { a, b },
  size: 0,
  probability: 0,
  byPrinter: 0,
});

describe('pictures apart', () => {
  it('are compared on every target that both are printed on', () => {
    const [both, one] = [[edition, dummy], [dummy]].map(targets => picture('rgb-neutral', { targets }));
    assert.deepEqual(
      apartOnTargets(both, one, 2).map(({ target, apart }) => [target.name, apart.size < 0.1]),
      [['dummy', true]],
    );
    assert.deepEqual(apartOnTargets(both, picture('rgb-neutral', { targets: [] }), 2), []);
  });
  it('lie in a direction if the distance is worth one', () => {
    assert.equal(towards(difference(1, 4)), 'warmer');
    assert.equal(towards(difference(0, -4)), 'more bluish');
    assert.equal(towards(difference(-3, 0.5)), 'more greenish');
    assert.equal(towards(difference(3, -1)), 'more pinkish');
    assert.equal(towards(difference(0.3, 0.3)), null);
  });
});
